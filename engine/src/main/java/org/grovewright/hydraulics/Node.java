package org.grovewright.hydraulics;

import java.util.Objects;

/** A point where links meet, water is taken or water comes in. */
public sealed interface Node {
  /** Name of the node, unique among nodes. */
  String id();

  /** Elevation in m above the network's datum. */
  double elevation();

  /**
   * A point where pipes meet.
   *
   * @param id name
   * @param elevation elevation in m
   */
  record Junction(String id, double elevation) implements Node {
    /** Checks that no part is missing. */
    public Junction {
      Objects.requireNonNull(id, "id");
    }
  }

  /**
   * Open water so large that its level does not move.
   *
   * @param id name
   * @param head level of the water in m
   */
  record Reservoir(String id, double head) implements Node {
    /** Checks that no part is missing. */
    public Reservoir {
      Objects.requireNonNull(id, "id");
    }

    @Override
    public double elevation() {
      return head;
    }
  }

  /**
   * A tap, main or tank whose pressure falls as more is drawn. Nothing flows back into it.
   *
   * @param id name
   * @param elevation elevation of the outlet in m
   * @param supply what it gives
   */
  record Source(String id, double elevation, SupplyCurve supply) implements Node {
    /** Checks that no part is missing. */
    public Source {
      Objects.requireNonNull(id, "id");
      Objects.requireNonNull(supply, "supply");
    }
  }
}
