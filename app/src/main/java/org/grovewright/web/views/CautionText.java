package org.grovewright.web.views;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import org.grovewright.catalogue.Catalogue;

/**
 * A caution in the reader's language.
 *
 * @param key catalogue key
 * @param title a few words
 * @param text what to do
 */
public record CautionText(String key, String title, String text) {
  /** The cautions of some keys, each once. */
  static List<CautionText> of(Collection<String> keys, Catalogue catalogue, Voice voice) {
    return new LinkedHashSet<>(keys)
        .stream()
            .map(key -> catalogue.cautions().get(key))
            .filter(Objects::nonNull)
            .map(c -> new CautionText(c.key(), voice.say(c.title()), voice.say(c.text())))
            .toList();
  }
}
