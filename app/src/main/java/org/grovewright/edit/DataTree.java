package org.grovewright.edit;

import com.fasterxml.jackson.core.JsonPointer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The same changes as in the text, made in the values that the text stands for. */
final class DataTree {
  private DataTree() {}

  static boolean has(Object data, JsonPointer place) {
    if (place.matches()) {
      return true;
    }
    if (data instanceof Map<?, ?> map) {
      String key = place.getMatchingProperty();
      return map.containsKey(key) && has(map.get(key), place.tail());
    }
    if (data instanceof List<?> list) {
      int index = place.getMatchingIndex();
      return index >= 0 && index < list.size() && has(list.get(index), place.tail());
    }
    return false;
  }

  static Object with(Object data, JsonPointer place, Object value) {
    if (place.matches()) {
      return value;
    }
    if (data instanceof Map<?, ?> map) {
      Map<Object, Object> copy = new LinkedHashMap<>(map);
      String key = place.getMatchingProperty();
      copy.put(key, with(map.get(key), place.tail(), value));
      return copy;
    }
    if (data instanceof List<?> list) {
      List<Object> copy = new ArrayList<>(list);
      if (place.tail().matches() && place.getMatchingProperty().equals("-")) {
        copy.add(value);
        return copy;
      }
      int index = index(place, list);
      copy.set(index, with(list.get(index), place.tail(), value));
      return copy;
    }
    throw nothing(place);
  }

  static Object without(Object data, JsonPointer place) {
    if (data instanceof Map<?, ?> map) {
      Map<Object, Object> copy = new LinkedHashMap<>(map);
      String key = place.getMatchingProperty();
      if (place.tail().matches()) {
        copy.remove(key);
      } else {
        copy.put(key, without(map.get(key), place.tail()));
      }
      return copy;
    }
    if (data instanceof List<?> list) {
      List<Object> copy = new ArrayList<>(list);
      int index = index(place, list);
      if (place.tail().matches()) {
        copy.remove(index);
      } else {
        copy.set(index, without(list.get(index), place.tail()));
      }
      return copy;
    }
    throw nothing(place);
  }

  private static int index(JsonPointer place, List<?> list) {
    int index = place.getMatchingIndex();
    if (index < 0 || index >= list.size()) {
      throw nothing(place);
    }
    return index;
  }

  private static EditException nothing(JsonPointer place) {
    return new EditException("There is no place {0} in the description.", place);
  }
}
