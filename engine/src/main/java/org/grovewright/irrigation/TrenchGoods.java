package org.grovewright.irrigation;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.TrenchGround;
import org.grovewright.demand.WorkAmount;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;
import org.grovewright.trench.Burial;
import org.grovewright.trench.Trench;
import org.grovewright.trench.TrenchRules;

/** Goods, work and figures of the trench of the mains. */
public final class TrenchGoods {
  /** Catalogue key of the tape over the main. */
  static final String TAPE = "part.marking-tape";

  /** Catalogue key of the sleeve under paving. */
  static final String SLEEVE = "part.sleeve-75";

  private static final String ID = "irrigation.trench";

  private static final String OVER_GROUND = "measured along the slope of the ground";

  private final Trench trench;
  private final Catalogue catalogue;

  TrenchGoods(Trench trench, Catalogue catalogue) {
    this.trench = trench;
    this.catalogue = catalogue;
  }

  /** Tape over the pipes, and sleeves for each pipe under paving, where the catalogue has them. */
  void goods(GoodsList goods) {
    if (catalogue.parts().containsKey(TAPE)) {
      double roll = catalogue.constant("irrigation.tape-roll").value();
      goods.pieces(TAPE, (int) Math.ceil(trench.lengthM() / roll), "over the main");
    }
    if (catalogue.parts().containsKey(SLEEVE)) {
      double piece = catalogue.constant("irrigation.sleeve-piece").value();
      for (Trench.Segment segment : trench.segments()) {
        if (segment.ground().kind() == TrenchGround.Kind.PAVING) {
          int pieces = (int) Math.ceil(segment.lengthM() / piece) * segment.pipes().size();
          goods.pieces(SLEEVE, pieces, "segment " + segment.number());
        }
      }
    }
  }

  /** Work in the ground; each kind names the segments it is done on. */
  void work(List<WorkAmount> work) {
    grouped(g -> java.util.Optional.of(g.digTask()))
        .forEach(
            (task, segments) ->
                add(work, task, segments, Trench.Segment::volumeM3, ID + "-volume." + slug(task)));
    grouped(TrenchGround::liftTask)
        .forEach(
            (task, segments) ->
                add(work, task, segments, Trench.Segment::areaM2, ID + "-area." + slug(task)));
    grouped(TrenchGround::mendTask)
        .forEach(
            (task, segments) ->
                add(work, task, segments, Trench.Segment::areaM2, ID + "-area." + slug(task)));
    if (!trench.crossings().isEmpty()) {
      List<Integer> crossed =
          trench.crossings().stream().map(Trench.Crossing::segment).distinct().sorted().toList();
      work.add(new WorkAmount("expose-service", "", trench.crossings().size(), "", named(crossed)));
    }
    work.add(
        new WorkAmount(
            "backfill-trench", "", trench.volumeM3(), ID + "-volume", all(trench.segments())));
  }

  /** Which segments work on the mains is done on. */
  String all() {
    return all(trench.segments());
  }

  private Map<String, List<Trench.Segment>> grouped(
      Function<TrenchGround, java.util.Optional<String>> taskOf) {
    Map<String, List<Trench.Segment>> grouped = new LinkedHashMap<>();
    for (Trench.Segment segment : trench.segments()) {
      taskOf
          .apply(segment.ground())
          .ifPresent(
              task -> grouped.computeIfAbsent(task, t -> new java.util.ArrayList<>()).add(segment));
    }
    return grouped;
  }

  private static void add(
      List<WorkAmount> work,
      String task,
      List<Trench.Segment> segments,
      ToDoubleFunction<Trench.Segment> amount,
      String figureId) {
    double sum = segments.stream().mapToDouble(amount).sum();
    work.add(new WorkAmount(task, "", sum, figureId, all(segments)));
  }

  private static String all(List<Trench.Segment> segments) {
    return named(segments.stream().map(Trench.Segment::number).toList());
  }

  /** The numbers of segments, runs of them drawn together: 1-4, 6. */
  private static String named(List<Integer> numbers) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < numbers.size(); i++) {
      int last = i;
      while (last + 1 < numbers.size() && numbers.get(last + 1) == numbers.get(last) + 1) {
        last++;
      }
      text.append(text.length() == 0 ? "" : ", ").append(numbers.get(i));
      if (last > i) {
        text.append(last == i + 1 ? ", " : "\u2013").append(numbers.get(last));
      }
      i = last;
    }
    return text.toString();
  }

  private static String slug(String task) {
    return FigureBook.slugOfKey(task);
  }

  /** Id of a figure of a segment: its length, depth or width. */
  public static String segmentId(int number, String what) {
    return String.format(Locale.ROOT, "%s.segment-%02d.%s", ID, number, what);
  }

  /** Enters the figures of the trench. */
  void enter(FigureBook book, Burial burial, TrenchRules rules, double mainsM) {
    frost(book, burial);
    book.enter(
        ID + "-length",
        "Length of trench for the mains",
        trench.lengthM(),
        Kind.LENGTH,
        Working.of("length of all ways of mains, shared ways once", OVER_GROUND));
    book.enter(
        "irrigation.main-length",
        "Length of pipe of the mains",
        mainsM,
        Kind.LENGTH,
        Working.of("length of all mains", OVER_GROUND));
    for (Trench.Segment segment : trench.segments()) {
      segment(book, segment, burial, rules);
    }
    book.enter(
        ID + "-volume",
        "Soil dug for the trench",
        trench.volumeM3(),
        Kind.BULK_VOLUME,
        volumes(trench.segments()));
    grouped(g -> java.util.Optional.of(g.digTask()))
        .forEach(
            (task, segments) ->
                book.enter(
                    ID + "-volume." + slug(task),
                    "Soil dug: " + name(task),
                    segments.stream().mapToDouble(Trench.Segment::volumeM3).sum(),
                    Kind.BULK_VOLUME,
                    volumes(segments)));
    areas(book, TrenchGround::liftTask);
    areas(book, TrenchGround::mendTask);
  }

  private void areas(FigureBook book, Function<TrenchGround, java.util.Optional<String>> taskOf) {
    grouped(taskOf)
        .forEach(
            (task, segments) ->
                book.enter(
                    ID + "-area." + slug(task),
                    "Surface over the trench: " + name(task),
                    segments.stream().mapToDouble(Trench.Segment::areaM2).sum(),
                    Kind.AREA,
                    new Working(
                        "sum of length times width of the segments",
                        segments.stream()
                            .map(
                                s ->
                                    new Input(
                                        "segment " + s.number(),
                                        s.areaM2(),
                                        Kind.AREA,
                                        "design of the trench"))
                            .toList(),
                        "measured on the plan")));
  }

  private String name(String task) {
    return catalogue.tasks().get(task).name();
  }

  private static Working volumes(List<Trench.Segment> segments) {
    return new Working(
        "sum of length times width times depth of the segments",
        segments.stream()
            .map(
                s ->
                    new Input(
                        "segment " + s.number(),
                        s.volumeM3(),
                        Kind.BULK_VOLUME,
                        "design of the trench"))
            .collect(Collectors.toList()),
        "measured on the plan");
  }

  private void frost(FigureBook book, Burial burial) {
    if (burial.given()) {
      book.enter(
          "irrigation.frost-depth",
          "How deep frost goes into the ground",
          burial.frostM(),
          Kind.LENGTH,
          Working.given("site, frost_depth"));
      return;
    }
    book.enter(
        "irrigation.frost-depth",
        "How deep frost goes into the ground",
        burial.frostM(),
        Kind.LENGTH,
        Working.of(
            "x = c sqrt(n I), with I the kelvin days below freezing of months colder by a margin"
                + " than their means",
            catalogue.constant("irrigation.frost-penetration").source(),
            catalogue.constant("irrigation.frost-penetration").as("c"),
            catalogue.constant("irrigation.frost-surface").as("n"),
            new Input(
                "I",
                burial.freezingKelvinDays(),
                Kind.NUMBER,
                "climate, months: each made colder by the margin"),
            catalogue.constant("irrigation.frost-cold-winter").as("margin")));
  }

  private void segment(FigureBook book, Trench.Segment segment, Burial burial, TrenchRules rules) {
    String name = "Segment " + segment.number() + " of the trench: ";
    double traffic = segment.ground().mainCover().of(segment.vehicles());
    double pipe =
        segment.pipes().stream().mapToDouble(p -> p.pipe().outsideDiameterM()).max().orElse(0);
    book.enter(
        segmentId(segment.number(), "length"),
        name + "length",
        segment.lengthM(),
        Kind.LENGTH,
        Working.of("length of its line", OVER_GROUND));
    book.enter(
        segmentId(segment.number(), "depth"),
        name + "depth",
        segment.depthM(),
        Kind.LENGTH,
        Working.of(
            burial.drained()
                ? "z = a + d + b; frost goes deeper, so the main is drained before winter"
                : "z = max(a, f) + d + b",
            segment.ground().source(),
            new Input(
                "a (cover for the ground and its traffic)",
                traffic,
                Kind.LENGTH,
                "catalogue: grounds, " + segment.ground().name()),
            new Input("f (frost)", burial.frostM(), Kind.LENGTH, "irrigation.frost-depth"),
            new Input("d (pipe)", pipe, Kind.BORE, "outside diameter of the widest pipe in it"),
            new Input(
                "b (bed)",
                rules.beddingM(),
                Kind.LENGTH,
                "catalogue: constants, irrigation.trench-bedding")));
    book.enter(
        segmentId(segment.number(), "width"),
        name + "width",
        segment.widthM(),
        Kind.LENGTH,
        Working.of(
            "w = max(w0, sum of pipe diameters + (n + 1) g)",
            Working.COMMON_PRACTICE,
            new Input(
                "w0",
                rules.leastWidthM(),
                Kind.LENGTH,
                "catalogue: constants, irrigation.trench-least-width"),
            new Input("n (pipes)", segment.pipes().size(), Kind.COUNT, "design of the trench"),
            new Input(
                "g",
                rules.pipeGapM(),
                Kind.LENGTH,
                "catalogue: constants, irrigation.trench-pipe-gap")));
  }
}
