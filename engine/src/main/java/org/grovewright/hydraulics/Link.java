package org.grovewright.hydraulics;

import java.util.Objects;

/** A part that water flows through from one node to another. */
public sealed interface Link {
  /** Name of the link, unique among links. */
  String id();

  /** Id of the node that flow is counted from. */
  String from();

  /** Id of the node that flow is counted to. */
  String to();

  /**
   * A pipe.
   *
   * @param id name
   * @param from start node
   * @param to end node
   * @param length length in m
   * @param diameter inside diameter in m
   * @param roughness roughness of the wall
   * @param minorLoss sum of the K of fittings in it, on the velocity head in the bore
   * @param checkValve true where water can only flow from start to end
   * @param closed true where a valve in it is shut
   */
  record Pipe(
      String id,
      String from,
      String to,
      double length,
      double diameter,
      Roughness roughness,
      double minorLoss,
      boolean checkValve,
      boolean closed)
      implements Link {
    /** Checks that no part is missing. */
    public Pipe {
      requireNames(id, from, to);
      Objects.requireNonNull(roughness, "roughness");
    }

    /** A plain open pipe. */
    public static Pipe of(
        String id, String from, String to, double length, double diameter, Roughness roughness) {
      return new Pipe(id, from, to, length, diameter, roughness, 0, false, false);
    }

    /** This pipe with more fittings of a total K. */
    public Pipe withMinorLoss(double k) {
      return new Pipe(id, from, to, length, diameter, roughness, minorLoss + k, checkValve, closed);
    }

    /** This pipe with a check valve that lets water flow from start to end only. */
    public Pipe withCheckValve() {
      return new Pipe(id, from, to, length, diameter, roughness, minorLoss, true, closed);
    }

    /** This pipe with its valve shut. */
    public Pipe shut() {
      return new Pipe(id, from, to, length, diameter, roughness, minorLoss, checkValve, true);
    }

    /**
     * This pipe with the barbs of in-line emitters in it, counted as so much more pipe: the usual
     * way in which makers publish barb losses.
     *
     * @param count number of barbs in this pipe
     * @param equivalentLengthM pipe length in m that loses as much as one barb
     */
    public Pipe withBarbs(int count, double equivalentLengthM) {
      return new Pipe(
          id,
          from,
          to,
          length + count * equivalentLengthM,
          diameter,
          roughness,
          minorLoss,
          checkValve,
          closed);
    }
  }

  /**
   * A regulator that holds the pressure after it at its set value while enough arrives, and stops
   * reverse flow.
   *
   * @param id name
   * @param from inlet node
   * @param to outlet node
   * @param diameter bore in m, for the loss when fully open
   * @param setPressure pressure held at the outlet node, in m of water
   * @param minorLoss K when fully open
   */
  record PressureRegulator(
      String id, String from, String to, double diameter, double setPressure, double minorLoss)
      implements Link {
    /** Checks that no part is missing. */
    public PressureRegulator {
      requireNames(id, from, to);
    }
  }

  /**
   * A filter, meter, injector, check valve or other device with a published loss curve.
   *
   * @param id name
   * @param from start node
   * @param to end node
   * @param loss its loss curve
   * @param oneWay true where water can only flow from start to end
   * @param closed true where it is shut
   */
  record LossDevice(
      String id, String from, String to, LossCurve loss, boolean oneWay, boolean closed)
      implements Link {
    /** Checks that no part is missing. */
    public LossDevice {
      requireNames(id, from, to);
      Objects.requireNonNull(loss, "loss");
    }
  }

  /**
   * A pump that lifts from start to end and lets nothing back.
   *
   * @param id name
   * @param from suction node
   * @param to discharge node
   * @param curve its curve
   */
  record Pump(String id, String from, String to, PumpCurve curve) implements Link {
    /** Checks that no part is missing. */
    public Pump {
      requireNames(id, from, to);
      Objects.requireNonNull(curve, "curve");
    }
  }

  private static void requireNames(String id, String from, String to) {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(from, "from");
    Objects.requireNonNull(to, "to");
  }
}
