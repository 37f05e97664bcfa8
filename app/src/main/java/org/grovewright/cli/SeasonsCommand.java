package org.grovewright.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.FigureBook;
import org.grovewright.season.SeasonPlan;
import org.grovewright.season.SeasonSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

@Command(name = "seasons", mixinStandardHelpOptions = true)
final class SeasonsCommand implements Callable<Integer> {
  @Mixin private GroveArguments grove;
  @Option(names = "--year", defaultValue = "1") private int year;
  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    Plan plan = new PlanSource(grove.catalogue(), spec.commandLine().getErr()).plan(grove.file());
    long t = System.nanoTime();
    SeasonPlan s = SeasonPlan.of(plan.grove(), plan.catalogue(), plan.water(), plan.watering(), plan.programme(),
        SeasonSettings.usual(year, plan.catalogue()), new FigureBook());
    out.println("ms " + (System.nanoTime() - t) / 1e6 + " trials " + s.trials());
    out.println(s.card());
    var all = new java.util.ArrayList<>(s.others());
    all.add(0, s.outcome());
    for (var o : all) out.printf("%s %.1f m3 stressed %.1f lost %.1f kept %d/%d worst %s %.2f%n", o.way(), o.waterM3PerYear(), o.stressedPlantDays(), o.lostM3PerYear(), o.kept(0.1), o.plants().size(), o.worst().plantId(), o.worst().failedShare());
    s.trade().forEach(out::println);
    s.findings().forEach(out::println);
    return 0;
  }
}
