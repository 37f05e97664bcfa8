package org.grovewright.edit;

import com.fasterxml.jackson.core.JsonPointer;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.model.Point;

/** One change of a description. */
public sealed interface Operation {
  /**
   * Sets a field, or adds to a list.
   *
   * @param place where, a JSON Pointer (RFC 6901); its last step {@code -} adds to the end of a
   *     list
   * @param value maps, lists, texts, numbers, truth values
   */
  record SetField(JsonPointer place, Object value) implements Operation {}

  /**
   * Removes a field or an item of a list.
   *
   * @param place where, a JSON Pointer
   */
  record RemoveField(JsonPointer place) implements Operation {}

  /**
   * Moves a plant. A plant of a row goes along it; one that is to leave its row becomes a plant on
   * its own.
   *
   * @param plantId the plant
   * @param to where to
   * @param offRow whether it leaves its row
   */
  record MovePlant(String plantId, Point to, boolean offRow) implements Operation {}

  /**
   * Adds a plant.
   *
   * @param species catalogue key
   * @param at where; on a row, the nearest place of the row
   * @param rowId the row, if any
   * @param further other fields of the plant as in a description, such as cultivar
   */
  record AddPlant(String species, Point at, Optional<String> rowId, Map<String, Object> further)
      implements Operation {
    /** Copies the fields. */
    public AddPlant {
      further = Map.copyOf(further);
    }
  }

  /**
   * Removes a plant.
   *
   * @param plantId the plant
   */
  record RemovePlant(String plantId) implements Operation {}

  /**
   * Changes what is said of a plant besides its place.
   *
   * @param plantId the plant
   * @param fields fields as in a description, such as cultivar
   * @param without fields that are to be said no more
   */
  record SetPlant(String plantId, Map<String, Object> fields, List<String> without)
      implements Operation {
    /** Copies the fields. */
    public SetPlant {
      fields = Map.copyOf(fields);
      without = List.copyOf(without);
    }
  }

  /**
   * Gives a row another line. Its plants keep their distances from its start.
   *
   * @param rowId the row
   * @param line the points it is to run through, at least two
   */
  record MoveRow(String rowId, List<Point> line) implements Operation {
    /** Copies the points. */
    public MoveRow {
      line = List.copyOf(line);
    }
  }

  /**
   * Replaces the whole description.
   *
   * @param text the new one
   */
  record Replace(String text) implements Operation {}
}
