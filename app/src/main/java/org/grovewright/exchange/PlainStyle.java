package org.grovewright.exchange;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Style sheets for a printer that knows neither variables nor media: the values of the print rules
 * are put in the place of variables, and rules for screens are taken away.
 */
final class PlainStyle {
  private static final Pattern VALUE = Pattern.compile("(--[a-z0-9-]+)\\s*:\\s*([^;}]+)");
  private static final Pattern USE = Pattern.compile("var\\((--[a-z0-9-]+)\\)");
  private static final Pattern SET = Pattern.compile("--[a-z0-9-]+\\s*:\\s*[^;}]+;?");
  private static final Pattern MEDIA = Pattern.compile("@media\\s*([^{]*)\\{");

  /** Properties that the printer stumbles over. */
  private static final Pattern UNKNOWN =
      Pattern.compile("(color-scheme|content-visibility|accent-color)\\s*:[^;}]*;?");

  private static final Pattern RULE = Pattern.compile("([^{}]+)\\{([^{}]*)\\}");
  private static final Set<String> OF_DRAWINGS =
      Set.of(
          "fill",
          "fill-opacity",
          "stroke",
          "stroke-width",
          "stroke-dasharray",
          "stroke-linejoin",
          "stroke-linecap",
          "stroke-opacity",
          "opacity",
          "font-style",
          "font-weight",
          "font-size",
          "text-anchor");
  private static final Pattern SIMPLE_VALUE = Pattern.compile("[-#.,%\\w\\s]*|url\\(#[\\w-]+\\)");
  private static final Pattern SIMPLE_SELECTOR = Pattern.compile("[-.\\w\\s,>]+");
  private static final Pattern RELATIVE = Pattern.compile(".*\\d(rem|em|vw|vh|ch)\\b.*");

  private PlainStyle() {}

  /** The part of a style sheet that drawings have use for. */
  static String ofDrawings(String css) {
    StringBuilder kept = new StringBuilder();
    Matcher rule = RULE.matcher(of(css));
    while (rule.find()) {
      String selector = rule.group(1).strip();
      // A line under the letters is a halo; the printer would draw it over them.
      boolean halo = rule.group(2).contains("paint-order");
      StringBuilder values = new StringBuilder();
      for (String part : rule.group(2).split(";")) {
        String[] pair = part.strip().split(":", 2);
        if (pair.length == 2
            && OF_DRAWINGS.contains(pair[0].strip())
            && !(halo && pair[0].strip().startsWith("stroke"))
            && SIMPLE_VALUE.matcher(pair[1].strip()).matches()
            && !RELATIVE.matcher(pair[1]).matches()) {
          values.append(pair[0].strip()).append(": ").append(pair[1].strip()).append("; ");
        }
      }
      if (values.length() > 0 && SIMPLE_SELECTOR.matcher(selector).matches()) {
        kept.append(selector).append(" { ").append(values).append("}\n");
      }
    }
    return kept.toString();
  }

  static String of(String css) {
    StringBuilder plain = new StringBuilder();
    StringBuilder print = new StringBuilder();
    split(css, plain, print);
    Map<String, String> values = new HashMap<>();
    collect(plain.toString(), values);
    collect(print.toString(), values);
    String rules = SET.matcher(plain + "\n" + print).replaceAll("");
    for (int depth = 0; depth < 4 && rules.contains("var("); depth++) {
      rules =
          USE.matcher(rules)
              .replaceAll(
                  use -> Matcher.quoteReplacement(values.getOrDefault(use.group(1), "inherit")));
    }
    return UNKNOWN.matcher(rules).replaceAll("");
  }

  private static void collect(String css, Map<String, String> values) {
    VALUE.matcher(css).results().forEach(v -> values.put(v.group(1), v.group(2).strip()));
  }

  /** Parts the rules for all media from those for print; others are dropped. */
  private static void split(String css, StringBuilder plain, StringBuilder print) {
    Matcher media = MEDIA.matcher(css);
    int from = 0;
    while (media.find(from)) {
      plain.append(css, from, media.start());
      int end = closing(css, media.end());
      if (media.group(1).strip().equals("print")) {
        print.append(css, media.end(), end);
      }
      from = Math.min(css.length(), end + 1);
    }
    plain.append(css.substring(from));
  }

  private static int closing(String css, int from) {
    int depth = 1;
    for (int i = from; i < css.length(); i++) {
      char c = css.charAt(i);
      depth += c == '{' ? 1 : c == '}' ? -1 : 0;
      if (depth == 0) {
        return i;
      }
    }
    return css.length();
  }
}
