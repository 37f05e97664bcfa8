package org.grovewright.web.views;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.grovewright.advice.WaterLog;
import org.grovewright.plan.Plan;

/** All pages of a plan as the browser gets them, for tests. */
final class Pages {
  private static final ObjectMapper JSON = new ObjectMapper();

  private Pages() {}

  /** Every page on days before, within and after the work, in a language. */
  static JsonNode all(Plan plan, String language) {
    Voice voice =
        Voice.of(language, plan.grove().preferences().units(), plan.grove().stock().currency());
    Map<String, Object> pages = new LinkedHashMap<>();
    pages.put("buy", BuyPage.of(plan, voice));
    pages.put("summary", SummaryPage.of(plan, voice));
    LocalDate start = plan.grove().start();
    for (LocalDate day : Stream.iterate(start, d -> d.plusDays(8)).limit(140).toList()) {
      pages.put("today " + day, TodayPage.of(plan, day, WaterLog.EMPTY, voice));
    }
    for (LocalDate day : List.of(start, start.plusYears(1), start.plusYears(2))) {
      pages.put("water " + day, WaterPage.of(plan, day, voice));
      pages.put("plants " + day, PlantsPage.of(plan, day, voice));
      plan.grove()
          .plantings()
          .forEach(
              p ->
                  pages.put(
                      "plant " + p.id() + " " + day,
                      PlantPage.of(plan, p.id(), day, voice).orElseThrow()));
    }
    return JSON.valueToTree(pages);
  }

  /** Ids of all figures that open from pages. */
  static Set<String> figures(JsonNode page) {
    Set<String> ids = new LinkedHashSet<>();
    page.findValuesAsText("figure").stream().filter(id -> !id.isEmpty()).forEach(ids::add);
    return ids;
  }

  /** All texts of pages that are not ids, with the way to them. */
  static Map<String, String> texts(JsonNode page) {
    Map<String, String> texts = new LinkedHashMap<>();
    collect("", page, texts);
    return texts;
  }

  private static void collect(String way, JsonNode node, Map<String, String> texts) {
    if (node.isTextual()) {
      texts.put(way, node.asText());
    }
    node.fields()
        .forEachRemaining(field -> collect(way + "/" + field.getKey(), field.getValue(), texts));
    List<JsonNode> elements = new ArrayList<>();
    if (node.isArray()) {
      node.forEach(elements::add);
    }
    for (int i = 0; i < elements.size(); i++) {
      collect(way + "/" + i, elements.get(i), texts);
    }
  }
}
