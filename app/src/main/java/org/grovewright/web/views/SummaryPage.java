package org.grovewright.web.views;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Input;

/**
 * What needs attention, and what was assumed.
 *
 * @param fallsShort whether the plan falls short anywhere
 * @param units units of the description, metric or us
 * @param start first day of the plan, in words
 * @param facts the figures an owner asks for first
 * @param shortfalls remarks where it falls short
 * @param notes other remarks
 * @param assumed what was assumed where the owner said nothing
 */
public record SummaryPage(
    boolean fallsShort,
    String units,
    String start,
    List<PlantPage.Fact> facts,
    List<Remark> shortfalls,
    List<Remark> notes,
    List<Remark> assumed) {
  private static final String ASSUMED = "assumed: ";

  /** The page of a plan. */
  public static SummaryPage of(Plan plan, Voice voice) {
    List<Remark> all =
        plan.findings().stream().map(finding -> voice.remark(plan, finding)).toList();
    List<Remark> assumed =
        new ArrayList<>(
            all.stream().filter(r -> !r.shortfall() && r.code().contains("assumed")).toList());
    plan.figures().values().stream()
        .flatMap(figure -> figure.working().inputs().stream())
        .filter(input -> input.origin().startsWith(ASSUMED))
        .map(input -> assumption(input, voice))
        .distinct()
        .forEach(assumed::add);
    return new SummaryPage(
        plan.fallsShort(),
        plan.grove().preferences().units().name().toLowerCase(Locale.ROOT),
        voice.language().date(plan.grove().start()),
        Stream.of(
                "layout.area",
                "ground.total.plants",
                "buy.total.cost",
                "work.total.person-time",
                "work.total.days")
            .map(plan.figures()::get)
            .filter(figure -> figure != null)
            .map(
                figure ->
                    new PlantPage.Fact(voice.say(figure.label()), voice.figure(plan, figure.id())))
            .toList(),
        all.stream().filter(Remark::shortfall).toList(),
        all.stream().filter(r -> !r.shortfall() && !r.code().contains("assumed")).toList(),
        assumed);
  }

  private static Remark assumption(Input input, Voice voice) {
    return new Remark(
        "assumed",
        false,
        voice.say(input.symbol()),
        voice.text(
            "summary.assumed",
            voice.say(input.origin()),
            voice.units().text(input.value(), input.kind())));
  }
}
