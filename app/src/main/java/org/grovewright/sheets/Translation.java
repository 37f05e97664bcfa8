package org.grovewright.sheets;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.grovewright.model.Grove;
import org.grovewright.sheets.ReportHtml.Fact;
import org.grovewright.sheets.ReportHtml.Report;
import org.grovewright.texts.Language;

/**
 * Says in another language what a report says in English. The owner's own names stay as they are.
 */
final class Translation {
  /** Texts of a drawing of ours, and the elements that hold them. */
  private static final Pattern SVG_TEXT =
      Pattern.compile("(<(text|title|desc)(?: [^<>]*)?>)([^<>]*)(</\\2>)");

  /** A number of a chart's axis, alone or with a unit. */
  private static final Pattern AMOUNT = Pattern.compile("[-\u2212]?[0-9]+\\.[0-9]+(\\s\\S{1,7})?");

  private final Language language;
  private final Set<String> own;

  private Translation(Language language, Set<String> own) {
    this.language = language;
    this.own = own;
  }

  /** A translation of sheets about a grove. */
  static Translation of(Grove grove, Language language) {
    Set<String> own = new HashSet<>();
    own.add(grove.site().name());
    grove.plantings().forEach(plant -> own.add(plant.id()));
    grove.rows().forEach(row -> own.add(row.id()));
    grove.site().fixtures().forEach(fixture -> own.add(fixture.id()));
    return new Translation(language, own);
  }

  /** The report in the language. */
  Report of(Report report) {
    if (language == Language.ENGLISH) {
      return report;
    }
    return new Report(
        say(report.title()),
        say(report.subtitle()),
        report.shortfall(),
        say(report.verdict()),
        report.facts().stream().map(f -> new Fact(say(f.label()), cell(f.value()))).toList(),
        report.sections().stream()
            .map(s -> new Section(s.id(), say(s.title()), blocks(s.blocks())))
            .toList(),
        report.workings());
  }

  /** A drawing in the language. */
  String svg(String svg) {
    if (language == Language.ENGLISH) {
      return svg;
    }
    Matcher texts = SVG_TEXT.matcher(svg);
    StringBuilder said = new StringBuilder();
    while (texts.find()) {
      String words = Svg.escape(say(plain(texts.group(3))));
      texts.appendReplacement(
          said, Matcher.quoteReplacement(texts.group(1) + words + texts.group(4)));
    }
    return texts.appendTail(said).toString();
  }

  private static String plain(String escaped) {
    return escaped
        .replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&quot;", "\"")
        .replace("&amp;", "&");
  }

  /** A text in the language. */
  String say(String english) {
    if (own.contains(english)) {
      return english;
    }
    if (AMOUNT.matcher(english).matches()) {
      return language.decimals(english);
    }
    return language.say(english);
  }

  private Cell cell(Cell cell) {
    return new Cell(say(cell.text()), cell.figureId());
  }

  private List<Block> blocks(List<Block> blocks) {
    return blocks.stream().map(this::block).toList();
  }

  private Block block(Block block) {
    if (block instanceof Block.Heading heading) {
      return new Block.Heading(say(heading.text()));
    } else if (block instanceof Block.Paragraph paragraph) {
      return new Block.Paragraph(paragraph.pieces().stream().map(this::cell).toList());
    } else if (block instanceof Block.Table table) {
      return table(table);
    } else if (block instanceof Block.Remarks remarks) {
      return new Block.Remarks(
          remarks.shortfall(),
          remarks.remarks().stream()
              .map(r -> new Block.Remark(say(r.about()), say(r.text())))
              .toList());
    } else if (block instanceof Block.Drawing drawing) {
      return drawing(drawing);
    } else if (block instanceof Block.Pictures pictures) {
      return new Block.Pictures(pictures.drawings().stream().map(this::drawing).toList());
    } else if (block instanceof Block.Plot plot) {
      return new Block.Plot(svg(plot.svg()), say(plot.name()), say(plot.note()));
    } else if (block instanceof Block.Map map) {
      return new Block.Map(svg(map.svg()), map.stages().stream().map(this::say).toList());
    } else if (block instanceof Block.Day day) {
      return new Block.Day(say(day.title()), day.jobs().stream().map(this::job).toList());
    } else if (block instanceof Block.Caution caution) {
      return caution(caution);
    } else if (block instanceof Block.Fold fold) {
      return new Block.Fold(say(fold.title()), fold.open(), blocks(fold.blocks()));
    }
    throw new IllegalStateException("no translation of a " + block.kind());
  }

  private Block.Table table(Block.Table table) {
    return new Block.Table(
        say(table.caption()),
        table.columns().stream().map(c -> new Block.Column(say(c.title()), c.number())).toList(),
        table.rows().stream().map(row -> row.stream().map(this::cell).toList()).toList());
  }

  private Block.Drawing drawing(Block.Drawing drawing) {
    return new Block.Drawing(svg(drawing.svg()), say(drawing.note()));
  }

  private Block.Caution caution(Block.Caution caution) {
    return new Block.Caution(caution.id(), say(caution.title()), say(caution.text()));
  }

  private Block.Job job(Block.Job job) {
    return new Block.Job(
        job.when(),
        cell(job.what()),
        say(job.note()),
        job.cautions().stream().map(this::caution).toList(),
        job.again().stream().map(r -> new Block.Reminder(r.id(), say(r.title()))).toList());
  }
}
