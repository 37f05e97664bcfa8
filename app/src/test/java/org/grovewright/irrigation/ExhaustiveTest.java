package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

/**
 * The designer's choice beside the best of all systems, on small groves. What the designer leaves
 * out on purpose counts as gap.
 */
class ExhaustiveTest {
  private static final int CASES = 60;

  /** Bounds of what was found: see docs/watering-design.md. */
  private static final double MEAN_GAP = 0.006;

  private static final double WORST_GAP = 0.05;

  @Test
  void closeToTheBestOfAllSystems(TestReporter reporter) {
    Catalogue catalogue = SmallCase.few(CatalogueFiles.load().catalogue());
    List<Double> gaps = new ArrayList<>();
    int withoutAny = 0;
    int solved = 0;
    for (long seed = 1; seed <= CASES; seed++) {
      DesignSite site = SmallCase.site(seed, catalogue);
      Candidate chosen = Alternatives.of(site).planned();
      ExhaustiveSearch.Found found = new ExhaustiveSearch(site).search();
      solved += found.solved();
      assertThat(found.undecided()).as("seed " + seed).isFalse();
      // What the designer finds, trying all must find; and what there is, the designer must find.
      assertThat(found.best().isPresent()).as("seed " + seed).isEqualTo(chosen.keepsRules());
      if (found.best().isEmpty()) {
        withoutAny++;
        continue;
      }
      double gap = chosen.cost().total() / found.best().get().cost().total() - 1;
      assertThat(gap).as("seed " + seed + ": the best of all is not dearer").isNotNegative();
      gaps.add(gap);
    }
    double mean = gaps.stream().mapToDouble(g -> g).average().orElseThrow();
    double worst = gaps.stream().mapToDouble(g -> g).max().orElseThrow();
    reporter.publishEntry(
        "design gap",
        String.format(
            Locale.ROOT,
            "%d groves, mean %.2f %%, worst %.2f %%, exact in %d; %d without any system that keeps"
                + " the rules; %d networks solved",
            gaps.size(),
            mean * 100,
            worst * 100,
            gaps.stream().filter(g -> g < 1e-4).count(),
            withoutAny,
            solved));
    assertThat(gaps).hasSizeGreaterThanOrEqualTo(50);
    assertThat(mean).isLessThan(MEAN_GAP);
    assertThat(worst).isLessThan(WORST_GAP);
  }
}
