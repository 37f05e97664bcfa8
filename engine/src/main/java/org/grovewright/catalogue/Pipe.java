package org.grovewright.catalogue;

/**
 * A size of tubing or pipe.
 *
 * @param key catalogue key
 * @param name name in plain words
 * @param use what it is fit for
 * @param standard the standard its dimensions follow
 * @param insideDiameterM inside diameter, metres
 * @param outsideDiameterM outside diameter, metres
 * @param hazenWilliamsC Hazen-Williams coefficient
 * @param roughnessM absolute roughness for Darcy-Weisbach, metres
 * @param pressureRatingPa highest lasting pressure at 20 degrees Celsius, pascals
 * @param joint how it is joined
 * @param market where it is sold
 * @param source where the values come from
 */
public record Pipe(
    String key,
    String name,
    Use use,
    String standard,
    double insideDiameterM,
    double outsideDiameterM,
    double hazenWilliamsC,
    double roughnessM,
    double pressureRatingPa,
    Joint joint,
    Market market,
    String source) {
  /** What a pipe is fit for. */
  public enum Use {
    LATERAL,
    MAIN,
    FEEDER
  }

  /** How a pipe is joined. */
  public enum Joint {
    BARBED,
    COMPRESSION,
    SOLVENT_CEMENT,
    THREADED
  }
}
