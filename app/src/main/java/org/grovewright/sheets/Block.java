package org.grovewright.sheets;

import java.util.List;
import java.util.Locale;

/** One piece of a section of the report. */
public sealed interface Block {
  /** Name by which the template knows the piece. */
  default String kind() {
    return getClass().getSimpleName().toLowerCase(Locale.ROOT);
  }

  /** A heading within a section. */
  record Heading(String text) implements Block {}

  /**
   * A paragraph.
   *
   * @param pieces texts and figures in turn
   */
  record Paragraph(List<Cell> pieces) implements Block {
    /** Copies the pieces. */
    public Paragraph {
      pieces = List.copyOf(pieces);
    }

    static Paragraph of(String text) {
      return new Paragraph(List.of(Cell.of(text)));
    }
  }

  /**
   * A table.
   *
   * @param caption what the table is about
   * @param columns its columns; the first one names the rows
   * @param rows its rows, each with a cell for every column
   */
  record Table(String caption, List<Column> columns, List<List<Cell>> rows) implements Block {
    /**
     * Copies the lists.
     *
     * @throws IllegalArgumentException if a row has not one cell for each column
     */
    public Table {
      columns = List.copyOf(columns);
      rows = rows.stream().map(List::copyOf).toList();
      for (List<Cell> row : rows) {
        if (row.size() != columns.size()) {
          throw new IllegalArgumentException(
              "a row of the table \"" + caption + "\" has " + row.size() + " cells");
        }
      }
    }
  }

  /**
   * A column of a table.
   *
   * @param title its heading
   * @param number whether it holds numbers, which stand to the right
   */
  record Column(String title, boolean number) {
    static Column words(String title) {
      return new Column(title, false);
    }

    static Column numbers(String title) {
      return new Column(title, true);
    }
  }

  /**
   * Remarks on the plan.
   *
   * @param shortfall whether they tell where the plan falls short
   * @param remarks the remarks
   */
  record Remarks(boolean shortfall, List<Remark> remarks) implements Block {
    /** Copies the remarks. */
    public Remarks {
      remarks = List.copyOf(remarks);
    }
  }

  /**
   * One remark.
   *
   * @param about what it is about, or empty text
   * @param text the remark
   */
  record Remark(String about, String text) {}

  /**
   * A drawing.
   *
   * @param svg its markup
   * @param note a sentence below it
   */
  record Drawing(String svg, String note) implements Block {}

  /**
   * Small drawings side by side where there is room.
   *
   * @param drawings the drawings
   */
  record Pictures(List<Drawing> drawings) implements Block {
    /** Copies the list. */
    public Pictures {
      drawings = List.copyOf(drawings);
    }
  }

  /**
   * A wide drawing that scrolls sideways on a small screen.
   *
   * @param svg its markup
   * @param name what it is, for readers who cannot see it
   * @param note a sentence below it
   */
  record Plot(String svg, String name, String note) implements Block {}

  /**
   * The map, with a choice of the moment for which crowns are shown.
   *
   * @param svg its markup
   * @param stages names of the moments, the earliest first
   */
  record Map(String svg, List<String> stages) implements Block {
    /** Copies the stages. */
    public Map {
      stages = List.copyOf(stages);
    }
  }

  /**
   * A day of work.
   *
   * @param title the date
   * @param jobs what is done
   */
  record Day(String title, List<Job> jobs) implements Block {
    /** Copies the jobs. */
    public Day {
      jobs = List.copyOf(jobs);
    }
  }

  /**
   * One stretch of work.
   *
   * @param when times of day
   * @param what the work
   * @param note people and the like
   * @param cautions warnings that belong to the work and are read here first
   * @param again ids and titles of warnings that belong to the work and stand further up
   */
  record Job(String when, Cell what, String note, List<Caution> cautions, List<Reminder> again) {
    /** Copies the lists. */
    public Job {
      cautions = List.copyOf(cautions);
      again = List.copyOf(again);
    }
  }

  /** A warning that was read before. */
  record Reminder(String id, String title) {}

  /**
   * A warning.
   *
   * @param id name for links within the page, or empty text
   * @param title a few words
   * @param text what to do
   */
  record Caution(String id, String title, String text) implements Block {}

  /**
   * Blocks that the reader may fold away.
   *
   * @param title what is inside
   * @param open whether it is open at first
   * @param blocks what is inside
   */
  record Fold(String title, boolean open, List<Block> blocks) implements Block {
    /** Copies the blocks. */
    public Fold {
      blocks = List.copyOf(blocks);
    }
  }
}
