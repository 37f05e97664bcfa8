package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.grovewright.irrigation.TrenchGoods;
import org.grovewright.model.Fixture;
import org.grovewright.quantity.Kind;
import org.grovewright.trench.Trench;

/** Where the mains are dug: a drawing with numbered segments, their depths, and what they cross. */
final class TrenchSection {
  private final Trench trench;
  private final List<Fixture> fixtures;
  private final Workings workings;
  private final ReaderUnits units;

  TrenchSection(Trench trench, List<Fixture> fixtures, Workings workings, ReaderUnits units) {
    this.trench = trench;
    this.fixtures = fixtures;
    this.workings = workings;
    this.units = units;
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Block.Paragraph(
            List.of(
                Cell.of("The trench of the mains is "),
                workings.cell("irrigation.trench-length"),
                Cell.of(" long, and "),
                workings.cell("irrigation.trench-volume"),
                Cell.of(
                    " of soil come out of it. Pipes of several zones share a trench where that is"
                        + " cheaper. Its way costs least in pipe and digging: it keeps off walls,"
                        + " roots and buried services, and opens paving only where going round"
                        + " costs more."))));
    blocks.add(
        new Block.Caution(
            "",
            "Have all lines marked before you dig",
            "Ask your local marking service to mark every pipe and cable, and wait until they have"
                + " done so. Beside the marks dig by hand. What is drawn here is only what the"
                + " description says; private lines are not marked by anyone unless you ask."));
    blocks.add(
        new Block.Drawing(
            TrenchMap.draw(trench, fixtures),
            "Numbers are those of the segments below. A ring marks a buried service that is"
                + " crossed."));
    blocks.add(segments());
    if (!trench.crossings().isEmpty()) {
      blocks.add(crossings());
    }
    return blocks;
  }

  private Block segments() {
    List<List<Cell>> rows = new ArrayList<>();
    for (Trench.Segment segment : trench.segments()) {
      int number = segment.number();
      rows.add(
          List.of(
              Cell.of(String.valueOf(number)),
              Cell.of(segment.ground().name() + (segment.vehicles() ? ", vehicles" : "")),
              workings.cell(TrenchGoods.segmentId(number, "length")),
              workings.cell(TrenchGoods.segmentId(number, "depth")),
              workings.cell(TrenchGoods.segmentId(number, "width")),
              Cell.of(pipes(segment))));
    }
    return new Block.Table(
        "Segments of the trench, from the supply on",
        List.of(
            Block.Column.words("Segment"),
            Block.Column.words("Ground"),
            Block.Column.numbers("Length"),
            Block.Column.numbers("Depth"),
            Block.Column.numbers("Width"),
            Block.Column.words("Pipes in it")),
        rows);
  }

  private static String pipes(Trench.Segment segment) {
    Set<String> names = new LinkedHashSet<>();
    for (Trench.InTrench pipe : segment.pipes()) {
      names.add(Words.zone(pipe.zone()) + ": " + pipe.pipe().name());
    }
    return String.join("; ", names);
  }

  private Block crossings() {
    List<List<Cell>> rows = new ArrayList<>();
    for (Trench.Crossing crossing : trench.crossings()) {
      rows.add(
          List.of(
              Cell.of(crossing.service()),
              Cell.of(crossing.carries().name().toLowerCase(Locale.ROOT)),
              Cell.of(String.valueOf(crossing.segment())),
              Cell.of(units.text(crossing.angleRad(), Kind.ANGLE)),
              workings.cell(TrenchGoods.segmentId(crossing.segment(), "depth")),
              crossing.serviceDepthM().isPresent()
                  ? Cell.of(units.text(crossing.serviceDepthM().getAsDouble(), Kind.LENGTH))
                  : Cell.of("not known")));
    }
    return new Block.Table(
        "Buried services that the trench crosses: uncover them by hand",
        List.of(
            Block.Column.words("Service"),
            Block.Column.words("Carries"),
            Block.Column.words("Segment"),
            Block.Column.numbers("Angle"),
            Block.Column.numbers("Depth of trench"),
            Block.Column.numbers("Depth of service")),
        rows);
  }
}
