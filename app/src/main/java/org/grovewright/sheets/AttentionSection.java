package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.Input;

/** What needs attention, and what was assumed: the plan's findings in the reader's words. */
final class AttentionSection {
  private static final String ASSUMED = "assumed: ";
  private static final int MOST_ALIKE = 3;

  private final Plan plan;
  private final ReaderUnits units;

  AttentionSection(Plan plan, ReaderUnits units) {
    this.plan = plan;
    this.units = units;
  }

  List<Block> attention() {
    List<Block> blocks = new ArrayList<>();
    List<Finding> shortfalls = findings(true, false);
    List<Finding> advice = findings(false, false);
    if (shortfalls.isEmpty()) {
      blocks.add(Block.Paragraph.of("The plan meets all that was asked of it."));
    } else {
      blocks.add(
          Block.Paragraph.of(
              "Where the plan falls short of what it should do. Change these before you buy."));
      blocks.addAll(grouped(shortfalls, true));
    }
    if (!advice.isEmpty()) {
      blocks.add(new Block.Heading("Good to know"));
      blocks.addAll(grouped(advice, false));
    }
    return blocks;
  }

  List<Block> assumptions() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        Block.Paragraph.of(
            "What you did not say was taken from the usual practice of the trade. Measure it and"
                + " write it into the grove file, and the plan gets better."));
    List<Block.Remark> remarks =
        new ArrayList<>(findings(false, true).stream().map(this::remark).toList());
    Set<String> origins = new LinkedHashSet<>();
    for (Figure figure : plan.figures().values()) {
      for (Input input : figure.working().inputs()) {
        if (input.origin().startsWith(ASSUMED) && origins.add(input.symbol() + input.origin())) {
          remarks.add(
              new Block.Remark(
                  units.language().say(input.symbol()),
                  units.language().say(input.origin().substring(ASSUMED.length()))
                      + ": "
                      + units.text(input.value(), input.kind())
                      + "."));
        }
      }
    }
    blocks.add(
        remarks.isEmpty()
            ? Block.Paragraph.of("Nothing had to be assumed.")
            : new Block.Remarks(false, remarks));
    return blocks;
  }

  /** Remarks of one kind beyond a few are folded behind the first of them. */
  private List<Block> grouped(List<Finding> findings, boolean shortfall) {
    Map<String, List<Block.Remark>> byCode = new LinkedHashMap<>();
    for (Finding finding : findings) {
      byCode.computeIfAbsent(finding.code(), code -> new ArrayList<>()).add(remark(finding));
    }
    List<Block> blocks = new ArrayList<>();
    for (List<Block.Remark> alike : byCode.values()) {
      if (alike.size() <= MOST_ALIKE) {
        blocks.add(new Block.Remarks(shortfall, alike));
        continue;
      }
      blocks.add(new Block.Remarks(shortfall, alike.subList(0, 1)));
      blocks.add(
          new Block.Fold(
              (alike.size() - 1) + " more like this: " + subjects(alike),
              false,
              List.of(new Block.Remarks(shortfall, alike.subList(1, alike.size())))));
    }
    return blocks;
  }

  private static String subjects(List<Block.Remark> alike) {
    return String.join(
        ", ",
        alike.subList(1, alike.size()).stream()
            .map(Block.Remark::about)
            .filter(about -> !about.isEmpty())
            .distinct()
            .toList());
  }

  private Block.Remark remark(Finding finding) {
    return new Block.Remark(
        Words.subject(plan, finding.subject(), units.language()), Words.message(finding, units));
  }

  private List<Finding> findings(boolean shortfall, boolean assumption) {
    List<Finding> found = new ArrayList<>();
    for (Finding finding : plan.findings()) {
      boolean isShortfall = finding.severity() == Severity.SHORTFALL;
      boolean isAssumption = !isShortfall && finding.code().contains("assumed");
      if (isShortfall == shortfall && isAssumption == assumption) {
        found.add(finding);
      }
    }
    return found;
  }
}
