package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.grovewright.irrigation.Alternative;
import org.grovewright.model.Grove;

/** The ways to build the watering that were compared, and how to choose among them. */
final class WaysSection {
  private final Grove grove;
  private final List<Alternative> ways;
  private final Workings workings;
  private final ReaderUnits units;

  WaysSection(Grove grove, List<Alternative> ways, Workings workings, ReaderUnits units) {
    this.grove = grove;
    this.ways = ways;
    this.workings = workings;
    this.units = units;
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        Block.Paragraph.of(
            "The watering was designed in several ways, each solved in full. The cost counts pipe,"
                + " emitters and fittings, what your time counts, and the water that is given in"
                + " excess because one valve serves unlike plants, over the years a system lasts."
                + " Way "
                + planned()
                + " is planned here."));
    blocks.add(table());
    if (ways.stream().filter(Alternative::keepsRules).count() > 1) {
      blocks.add(
          new Block.Drawing(
              chart(),
              "Up is more even, left is cheaper. The line joins the ways of which none other is"
                  + " both cheaper and more even. Ways that break a rule are left out."));
    }
    blocks.add(money());
    List<Block.Remark> why = new ArrayList<>();
    for (int i = 0; i < ways.size(); i++) {
      why.add(new Block.Remark("Way " + letter(i), Words.message(ways.get(i).why(), units)));
    }
    blocks.add(new Block.Remarks(false, why));
    blocks.add(
        Block.Paragraph.of(
            "To have another planned, write its short name into the watering part of your"
                + " description, such as choose: "
                + example()
                + ", and plan again. Prices and the value of your time change the order; the"
                + " figures show what went in."));
    blocks.add(keys());
    return blocks;
  }

  private static String letter(int index) {
    return String.valueOf((char) ('A' + index));
  }

  private String planned() {
    for (int i = 0; i < ways.size(); i++) {
      if (ways.get(i).planned()) {
        return letter(i);
      }
    }
    return "";
  }

  private String example() {
    return ways.stream().filter(way -> !way.planned()).findFirst().orElse(ways.get(0)).key();
  }

  private Block table() {
    List<List<Cell>> rows = new ArrayList<>();
    for (int i = 0; i < ways.size(); i++) {
      Alternative way = ways.get(i);
      rows.add(
          List.of(
              Cell.of(letter(i)),
              Cell.of(way.name()),
              workings.cell(way.figureId("cost")),
              workings.cell(way.figureId("uniformity")),
              workings.cell(way.figureId("minutes")),
              Cell.of(String.valueOf(way.zones())),
              Cell.of(standing(way))));
    }
    return new Block.Table(
        "Ways compared, the cheapest first",
        List.of(
            Block.Column.words("Way"),
            Block.Column.words("How it is built"),
            Block.Column.numbers("Cost over its life"),
            Block.Column.numbers("Emission uniformity"),
            Block.Column.numbers("Run on a peak day"),
            Block.Column.numbers("Zones"),
            Block.Column.words("Standing")),
        rows);
  }

  private static String standing(Alternative way) {
    String planned = way.planned() ? "planned, " : "";
    return planned
        + (!way.keepsRules()
            ? "breaks a rule"
            : way.onFront() ? "none is cheaper and more even" : "another is cheaper and as even");
  }

  private Block money() {
    List<List<Cell>> rows = new ArrayList<>();
    for (int i = 0; i < ways.size(); i++) {
      Alternative way = ways.get(i);
      rows.add(
          List.of(
              Cell.of(letter(i)),
              workings.cell(way.figureId("pipe")),
              workings.cell(way.figureId("fittings")),
              workings.cell(way.figureId("cash")),
              workings.cell(way.figureId("work")),
              workings.cell(way.figureId("labour")),
              workings.cell(way.figureId("wasted-water")),
              workings.cell(way.figureId("water")),
              workings.cell(way.figureId("extra"))));
    }
    return new Block.Table(
        "Where the money goes",
        List.of(
            Block.Column.words("Way"),
            Block.Column.numbers("Pipe and tubing"),
            Block.Column.numbers("Emitters and fittings"),
            Block.Column.numbers("Goods to pay for"),
            Block.Column.numbers("Work"),
            Block.Column.numbers("What that time counts"),
            Block.Column.numbers("Water in excess"),
            Block.Column.numbers("Price of that water"),
            Block.Column.numbers("Beyond the cheapest")),
        rows);
  }

  private Block keys() {
    List<List<Cell>> rows = new ArrayList<>();
    for (int i = 0; i < ways.size(); i++) {
      rows.add(List.of(Cell.of(letter(i)), Cell.of(ways.get(i).key())));
    }
    return new Block.Fold(
        "Short names of the ways",
        false,
        List.of(
            new Block.Table(
                "What to write after choose:",
                List.of(Block.Column.words("Way"), Block.Column.words("Short name")),
                rows)));
  }

  private String chart() {
    List<double[]> front = new ArrayList<>();
    List<CurveChart.Mark> marks = new ArrayList<>();
    double least = Double.POSITIVE_INFINITY;
    double most = 0;
    double low = 1;
    double high = 0;
    for (int i = 0; i < ways.size(); i++) {
      Alternative way = ways.get(i);
      if (!way.keepsRules()) {
        continue;
      }
      double cost = way.cost().total();
      double even = way.emissionUniformity() * 100;
      least = Math.min(least, cost);
      most = Math.max(most, cost);
      low = Math.min(low == 1 ? even : low, even);
      high = Math.max(high, even);
      marks.add(new CurveChart.Mark(letter(i), cost, even));
      if (way.onFront()) {
        front.add(new double[] {cost, even});
      }
    }
    front.sort(Comparator.comparingDouble(point -> point[0]));
    return CurveChart.draw(
        "Cost of each way against how evenly it waters",
        "ways-chart",
        CurveChart.Axis.around(
            "Cost over its life, " + grove.stock().currency(),
            least,
            most,
            Double.POSITIVE_INFINITY),
        CurveChart.Axis.around("Emission uniformity, %", low, high, 100),
        front,
        marks);
  }
}
