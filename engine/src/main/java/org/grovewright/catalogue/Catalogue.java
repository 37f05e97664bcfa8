package org.grovewright.catalogue;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * All tables, each a map from key to row in the order of the file.
 *
 * @param species plants
 * @param textures soil texture classes
 * @param pipes tubing and pipe by inside diameter
 * @param emitters emitters
 * @param filters filters
 * @param regulators pressure regulators
 * @param mixes soil mixes sold in bulk or bags
 * @param amendments soil amendments and fertilisers
 * @param mulches mulches
 * @param parts fittings, valves and other piece goods
 * @param tasks kinds of work with their rates
 * @param cautions warnings by key
 * @param clearances distances to keep from fixed things
 * @param grounds ground that a trench may go through
 * @param constants single numbers of the trade by key
 * @param prices typical price of any item that is bought, by item key
 */
public record Catalogue(
    Map<String, Species> species,
    Map<String, SoilTexture> textures,
    Map<String, Pipe> pipes,
    Map<String, EmitterType> emitters,
    Map<String, Filter> filters,
    Map<String, Regulator> regulators,
    Map<String, SoilMix> mixes,
    Map<String, Amendment> amendments,
    Map<String, Mulch> mulches,
    Map<String, Part> parts,
    Map<String, TaskRate> tasks,
    Map<String, Caution> cautions,
    List<Clearance> clearances,
    List<TrenchGround> grounds,
    Map<String, Constant> constants,
    Map<String, TypicalPrice> prices) {
  /** Copies the tables in their order. */
  public Catalogue {
    species = fixed(species);
    textures = fixed(textures);
    pipes = fixed(pipes);
    emitters = fixed(emitters);
    filters = fixed(filters);
    regulators = fixed(regulators);
    mixes = fixed(mixes);
    amendments = fixed(amendments);
    mulches = fixed(mulches);
    parts = fixed(parts);
    tasks = fixed(tasks);
    cautions = fixed(cautions);
    clearances = List.copyOf(clearances);
    grounds = List.copyOf(grounds);
    constants = fixed(constants);
    prices = fixed(prices);
  }

  private static <T> Map<String, T> fixed(Map<String, T> map) {
    return Collections.unmodifiableMap(new LinkedHashMap<>(map));
  }

  /**
   * A single number of the trade.
   *
   * @throws IllegalStateException if the catalogue has no such constant, which is a fault of ours
   */
  public Constant constant(String key) {
    Constant constant = constants.get(key);
    if (constant == null) {
      throw new IllegalStateException("the catalogue has no constant " + key);
    }
    return constant;
  }

  /**
   * What a trench through a kind of ground asks for.
   *
   * @throws IllegalStateException if the catalogue has no such row, which is a fault of ours
   */
  public TrenchGround ground(TrenchGround.Kind kind) {
    return grounds.stream()
        .filter(row -> row.kind() == kind)
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("the catalogue has no ground " + kind));
  }
}
