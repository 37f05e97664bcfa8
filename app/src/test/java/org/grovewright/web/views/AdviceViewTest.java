package org.grovewright.web.views;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;
import org.grovewright.advice.TodayAdvice;
import org.grovewright.advice.WaterLog;
import org.grovewright.model.Preferences.Units;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.texts.Language;
import org.junit.jupiter.api.Test;

class AdviceViewTest {
  private static final Plan PLAN = SpanishPagesTest.plan("demo.yaml");
  private static final Voice VOICE = Voice.of("en", Units.METRIC, "AUD");

  private static AdviceView advice(LocalDate day, WaterLog log) {
    return TodayPage.of(PLAN, day, log, VOICE).advice();
  }

  /** A dry month in which nothing was watered, by the owner's notes. */
  private static WaterLog dry(LocalDate day) {
    return new WaterLog(
        day.minusDays(40).datesUntil(day).map(date -> WaterLog.Run.skipped(date, "")).toList(),
        new TreeMap<>());
  }

  @Test
  void afterADryMonthItSaysToWaterAndAfterRainToWait() {
    LocalDate summer = LocalDate.of(2028, 1, 20);
    WaterLog dry = dry(summer);
    assertThat(advice(summer, dry).zones().get(0).action()).isIn("water", "wait");
    assertThat(advice(summer, dry).lookAt()).isNotEmpty();
    NavigableMap<LocalDate, Double> rain = new TreeMap<>();
    List.of(1, 2, 3).forEach(back -> rain.put(summer.minusDays(back), 0.06));
    AdviceView wet = advice(summer, new WaterLog(dry.runs(), rain));
    assertThat(wet.zones().get(0).action()).isEqualTo("skip");
    assertThat(wet.zones().get(0).text()).isEqualTo("Leave zone 1 off");
    assertThat(wet.lookAt()).isEmpty();
  }

  @Test
  void beforeTheWateringIsSetUpThereIsNoAdvice() {
    assertThat(advice(PLAN.care().from().minusDays(1), WaterLog.EMPTY).zones()).isEmpty();
    assertThat(advice(PLAN.care().from(), WaterLog.EMPTY).zones()).isNotEmpty();
  }

  @Test
  void withoutWeatherAndGaugeThePastCountsAsUsual() {
    AdviceView usual = advice(LocalDate.of(2027, 12, 4), WaterLog.EMPTY);
    assertThat(usual.remarks())
        .anySatisfy(remark -> assertThat(remark.code()).isEqualTo("advice.short-weather"))
        .noneSatisfy(remark -> assertThat(remark.code()).isEqualTo("advice.missing-weather"));
  }

  /** Limits, salt, a silent log and a lapse: all that the advice can say of them. */
  @Test
  void everyNumberOpensAndEveryWordHasASpanishOne() {
    Plan strict = SpanishPagesTest.strict();
    LocalDate summer = strict.grove().start().plusMonths(10);
    Language spanish = Language.of("es");
    Set<String> codes = new LinkedHashSet<>();
    for (WaterLog log : List.of(WaterLog.EMPTY, dry(summer))) {
      for (Plan plan : List.of(PLAN, strict)) {
        FigureBook book = new FigureBook();
        TodayAdvice made = AdviceView.made(plan, summer, log, book).orElseThrow();
        made.findings().forEach(finding -> codes.add(finding.code()));
        assertThat(made.findings())
            .allSatisfy(f -> assertThat(spanish.canSay(f.message())).as(f.message()).isTrue());
        Map<String, Figure> figures = AdviceView.figures(plan, summer, log);
        for (Figure figure : figures.values()) {
          Set<String> said = new LinkedHashSet<>();
          said.add(figure.label());
          said.add(figure.working().formula());
          said.add(figure.working().source());
          for (Input input : figure.working().inputs()) {
            said.add(input.symbol());
            if (!figures.containsKey(input.origin()) && plan.figure(input.origin()).isEmpty()) {
              said.add(input.origin());
            }
          }
          assertThat(said.stream().filter(text -> !spanish.canSay(text))).isEmpty();
        }
        AdviceView view = AdviceView.of(plan, summer, log, VOICE);
        assertThat(view.zones()).allSatisfy(zone -> assertThat(zone.numbers()).isNotEmpty());
        view.zones().stream()
            .flatMap(zone -> zone.numbers().stream())
            .map(number -> number.value().figure())
            .forEach(id -> assertThat(FigureView.of(plan, figures, id, VOICE)).isPresent());
      }
    }
    assertThat(codes).contains("advice.no-room", "advice.assumed-waterings");
  }
}
