package org.grovewright.catalogue.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Pipe;
import org.grovewright.catalogue.SoilTexture;
import org.grovewright.catalogue.Species;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rows of the catalogue, in SI, against published tables in their own units. */
class PublishedValuesTest {
  private static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();
  private static final double INCH = 0.0254;
  private static final double PSI = 6894.757;

  /** FAO-56 (1998) Table 12, single crop coefficients, read in an open transcription. */
  @ParameterizedTest
  @CsvSource({
    "avocado, 0.60, 0.85, 0.75",
    "orange, 0.70, 0.65, 0.70",
    "lemon, 0.70, 0.65, 0.70",
    "banana, 1.00, 1.20, 1.10",
    "apple, 0.45, 0.95, 0.70",
    "pear, 0.45, 0.95, 0.70",
    "sweet-cherry, 0.45, 0.95, 0.70",
    "peach, 0.45, 0.90, 0.65",
    "apricot, 0.45, 0.90, 0.65",
    "almond, 0.40, 0.90, 0.65",
    "olive, 0.65, 0.70, 0.70",
    "pistachio, 0.40, 1.10, 0.45",
    "walnut, 0.50, 1.10, 0.65",
    "kiwi, 0.40, 1.05, 1.05",
    "grape, 0.30, 0.85, 0.45",
    "blueberry, 0.30, 1.05, 0.50",
    "strawberry, 0.40, 0.85, 0.75",
    "mint, 0.60, 1.15, 1.10",
    "sweet-potato, 0.50, 1.15, 0.65",
  })
  void cropCoefficients(String key, double ini, double mid, double end) {
    Species.Kc kc = CATALOGUE.species().get(key).kc();
    assertThat(new double[] {kc.ini(), kc.mid(), kc.end()}).containsExactly(ini, mid, end);
  }

  /**
   * FAO-56 (1998) Table 22, range of the effective root depth in metres and depletion fraction,
   * read in an open transcription.
   */
  @ParameterizedTest
  @CsvSource({
    "avocado, 0.5, 1.0, 0.70",
    "orange, 1.2, 1.5, 0.50",
    "banana, 0.5, 0.9, 0.35",
    "apple, 1.0, 2.0, 0.50",
    "peach, 1.0, 2.0, 0.50",
    "almond, 1.0, 2.0, 0.40",
    "olive, 1.2, 1.7, 0.65",
    "pistachio, 1.0, 1.5, 0.40",
    "walnut, 1.7, 2.4, 0.50",
    "kiwi, 0.7, 1.3, 0.35",
    "grape, 1.0, 2.0, 0.35",
    "blueberry, 0.6, 1.2, 0.50",
    "strawberry, 0.2, 0.3, 0.20",
    "mint, 0.4, 0.8, 0.40",
    "white-clover, 0.6, 0.9, 0.50",
    "sweet-potato, 1.0, 1.5, 0.65",
  })
  void rootsAndDepletion(String key, double least, double most, double depletion) {
    Species species = CATALOGUE.species().get(key);
    assertThat(species.rootDepthM()).isBetween(least, most);
    assertThat(species.depletion()).isEqualTo(depletion);
  }

  /** FAO-56 (1998) Table 11, lengths of the stages in days, read in an open transcription. */
  @ParameterizedTest
  @CsvSource({
    "orange, 60, 90, 120, 95, 1",
    "apple, 30, 50, 130, 30, 3",
    "olive, 30, 90, 60, 90, 3",
    "pistachio, 20, 60, 30, 40, 2",
    "walnut, 20, 10, 130, 30, 4",
    "grape, 20, 50, 75, 60, 3",
    "banana, 120, 60, 180, 5, 2",
  })
  void stages(String key, int ini, int dev, int mid, int late, int month) {
    assertThat(CATALOGUE.species().get(key).kc())
        .extracting("iniDays", "devDays", "midDays", "lateDays", "startMonth")
        .containsExactly(ini, dev, mid, late, month);
  }

  /**
   * Thresholds in dS/m: strawberry and sweet potato from Maas (1990), U.S. Salinity Laboratory,
   * plum from the abstract of a trial on mature plum in Irrigation Science, all read; the others
   * from Maas and Grattan (1999), from memory.
   */
  @ParameterizedTest
  @CsvSource({
    "strawberry, 1.0",
    "sweet-potato, 1.5",
    "plum, 2.6",
    "almond, 1.5",
    "apricot, 1.6",
    "peach, 1.7",
    "grape, 1.5",
    "orange, 1.3",
    "grapefruit, 1.2",
  })
  void salinityThresholds(String key, double deciSiemensPerMetre) {
    assertThat(CATALOGUE.species().get(key).salinityThresholdSPerM())
        .hasValueCloseTo(deciSiemensPerMetre / 10, within(1e-12));
  }

  /**
   * Water contents at field capacity and wilting point, per cent by volume, read in an open table
   * of Green-Ampt parameters; they are those of Saxton and Rawls (2006) Table 3, from memory.
   */
  @ParameterizedTest
  @CsvSource({
    "sand, 10, 5",
    "loamy-sand, 12, 5",
    "sandy-loam, 18, 8",
    "loam, 28, 14",
    "silt-loam, 31, 11",
    "silt, 30, 6",
    "sandy-clay-loam, 27, 17",
    "clay-loam, 36, 22",
    "silty-clay-loam, 38, 22",
    "silty-clay, 41, 27",
  })
  void soilWater(String key, double fieldCapacity, double wiltingPoint) {
    SoilTexture soil = CATALOGUE.textures().get(key);
    assertThat(soil.fieldCapacity()).isCloseTo(fieldCapacity / 100, within(1e-12));
    assertThat(soil.wiltingPoint()).isCloseTo(wiltingPoint / 100, within(1e-12));
  }

  /** FAO-56 (1998) Table 19, ranges of readily evaporable water in mm, from memory. */
  @ParameterizedTest
  @CsvSource({
    "sand, 2, 7",
    "loamy-sand, 4, 8",
    "sandy-loam, 6, 10",
    "loam, 8, 10",
    "silt-loam, 8, 11",
    "silt, 8, 11",
    "silty-clay-loam, 8, 11",
    "silty-clay, 8, 12",
    "clay, 8, 12",
  })
  void readilyEvaporableWater(String key, double least, double most) {
    assertThat(CATALOGUE.textures().get(key).readilyEvaporableM() * 1000).isBetween(least, most);
  }

  /** FAO irrigation training manual 5, basic infiltration in mm/h, from memory. */
  @ParameterizedTest
  @CsvSource({
    "sand, 30, 500",
    "sandy-loam, 20, 30",
    "loam, 10, 20",
    "clay-loam, 5, 10",
    "clay, 1, 5",
  })
  void infiltration(String key, double least, double most) {
    assertThat(CATALOGUE.textures().get(key).infiltrationMPerS() * 3.6e6).isBetween(least, most);
  }

  /**
   * ASTM D1785 Schedule 40: outside and average inside diameter in inches and rating in psi, read
   * in a hydraulics firm's table of PVC pipe.
   */
  @ParameterizedTest
  @CsvSource({
    "half, 0.840, 0.608, 600",
    "three-quarter, 1.050, 0.810, 480",
    "1, 1.315, 1.033, 450",
    "1-1-4, 1.660, 1.364, 370",
    "1-1-2, 1.900, 1.592, 330",
    "2, 2.375, 2.049, 280",
  })
  void schedule40(String size, double outside, double inside, double psi) {
    Pipe pipe = CATALOGUE.pipes().get("pipe.pvc40-" + size);
    assertThat(pipe.outsideDiameterM()).isCloseTo(outside * INCH, within(1e-5));
    assertThat(pipe.insideDiameterM()).isCloseTo(inside * INCH, within(1e-5));
    assertThat(pipe.pressureRatingPa()).isCloseTo(psi * PSI, within(1000.0));
  }

  /** ISO 4427-2 (2007), least wall in mm and rating in bar, read in a pipe maker's table. */
  @ParameterizedTest
  @CsvSource({
    "pe100-pn16-20, 20, 2.0, 16",
    "pe100-pn16-25, 25, 2.3, 16",
    "pe100-pn16-32, 32, 3.0, 16",
    "pe100-pn16-40, 40, 3.7, 16",
    "pe100-pn16-50, 50, 4.6, 16",
    "pe100-pn16-63, 63, 5.8, 16",
    "pe100-pn10-32, 32, 2.0, 10",
    "pe100-pn10-40, 40, 2.4, 10",
    "pe100-pn10-50, 50, 3.0, 10",
    "pe100-pn10-63, 63, 3.8, 10",
    "pe80-pn6-40, 40, 2.0, 6",
    "pe80-pn6-50, 50, 2.4, 6",
    "pe80-pn6-63, 63, 3.0, 6",
  })
  void metricPolyethylene(String key, double outside, double wall, double bar) {
    Pipe pipe = CATALOGUE.pipes().get("pipe." + key);
    assertThat(pipe.outsideDiameterM()).isEqualTo(outside / 1000);
    assertThat(pipe.insideDiameterM()).isCloseTo((outside - 2 * wall) / 1000, within(1e-9));
    assertThat(pipe.pressureRatingPa()).isEqualTo(bar * 1e5);
  }

  /** ASTM D2239 has the inside diameters of Schedule 40 steel pipe, in inches; from memory. */
  @ParameterizedTest
  @CsvSource({
    "half, 0.622",
    "three-quarter, 0.824",
    "1, 1.049",
    "1-1-4, 1.380",
    "1-1-2, 1.610",
    "2, 2.067",
  })
  void insideDiameterControlledPolyethylene(String size, double inside) {
    Pipe pipe = CATALOGUE.pipes().get("pipe.pe100psi-" + size);
    assertThat(pipe.insideDiameterM()).isCloseTo(inside * INCH, within(1e-5));
    double wall = (pipe.outsideDiameterM() - pipe.insideDiameterM()) / 2;
    assertThat(pipe.insideDiameterM() / wall).as("dimension ratio").isLessThanOrEqualTo(15.1);
  }

  /**
   * Yearly nitrogen of a mature tree in pounds: citrus about 1, University of California Master
   * Gardeners of San Luis Obispo; grapefruit 0.75, advice for Arizona gardens; avocado 1 to 2, a
   * nurseryman's column for coastal California; all read.
   */
  @ParameterizedTest
  @CsvSource({"orange, 0.9, 1.1", "lemon, 0.9, 1.1", "grapefruit, 0.7, 0.8", "avocado, 0.98, 2"})
  void yearlyNitrogen(String key, double least, double most) {
    assertThat(CATALOGUE.species().get(key).feeding().nitrogenMatureKg() / 0.45359237)
        .isBetween(least, most);
  }

  @Test
  void unitsAreThoseOfTheEngine() {
    EmitterType emitter = CATALOGUE.emitters().get("emitter.pc-2");
    assertThat(emitter.nominalFlowM3PerS()).isCloseTo(0.002 / 3600, within(1e-15));
    assertThat(emitter.nominalPressurePa()).isEqualTo(100_000);
    assertThat(emitter.filterOpeningM()).isEqualTo(130e-6);
    assertThat(CATALOGUE.pipes().get("pipe.pe-16").outsideDiameterM()).isEqualTo(0.016);
    assertThat(CATALOGUE.regulators().get("reg.1-5-bar").setPressurePa()).isEqualTo(150_000);
    assertThat(CATALOGUE.constant("uniformity.excellent").value()).isEqualTo(0.9);
    // A US gallon is 231 cubic inches.
    assertThat(CATALOGUE.emitters().get("emitter.pc-1-gal").nominalFlowM3PerS())
        .isCloseTo(231 * INCH * INCH * INCH / 3600, within(1e-9));
  }
}
