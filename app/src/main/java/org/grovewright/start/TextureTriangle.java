package org.grovewright.start;

/**
 * Names a soil by its parts of sand, silt and clay, after the texture triangle of the United States
 * Department of Agriculture (Soil Survey Manual, chapter 3; limits from memory).
 */
public final class TextureTriangle {
  private TextureTriangle() {}

  /**
   * The class of a soil.
   *
   * @param sand share of sand, 0 to 1
   * @param silt share of silt, 0 to 1
   * @param clay share of clay, 0 to 1; the three need not add up to 1, since only their proportions
   *     count
   * @return catalogue key of the class
   * @throws IllegalArgumentException if one is negative or all are zero
   */
  public static String classOf(double sand, double silt, double clay) {
    double total = sand + silt + clay;
    if (!(total > 0) || sand < 0 || silt < 0 || clay < 0) {
      throw new IllegalArgumentException("sand, silt and clay must be parts of a whole");
    }
    return name(100 * sand / total, 100 * silt / total, 100 * clay / total);
  }

  private static String name(double sand, double silt, double clay) {
    if (clay >= 40) {
      return silt >= 40 ? "silty-clay" : sand > 45 ? "sandy-clay" : "clay";
    }
    if (clay >= 35 && sand > 45) {
      return "sandy-clay";
    }
    if (clay >= 27) {
      return sand <= 20 ? "silty-clay-loam" : sand <= 45 ? "clay-loam" : "sandy-clay-loam";
    }
    if (silt + 1.5 * clay < 15) {
      return "sand";
    }
    if (silt + 2 * clay < 30) {
      return "loamy-sand";
    }
    if (clay >= 20 && silt < 28 && sand > 45) {
      return "sandy-clay-loam";
    }
    if (silt >= 80 && clay < 12) {
      return "silt";
    }
    if (silt >= 50) {
      return "silt-loam";
    }
    return clay >= 7 && silt >= 28 && sand <= 52 ? "loam" : "sandy-loam";
  }
}
