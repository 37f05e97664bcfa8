package org.grovewright.exchange;

import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** Prints the map and the report as PDF. */
public final class Pdf {
  private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

  static {
    // What the library learns of the machine's fonts it would else keep in the user's home.
    if (System.getProperty("pdfbox.fontcache") == null) {
      System.setProperty("pdfbox.fontcache", System.getProperty("java.io.tmpdir"));
    }
  }

  private Pdf() {}

  /**
   * The map on one page.
   *
   * @param svg the map as a drawing of its own
   * @param title its title
   */
  public static byte[] map(String svg, String title) {
    Document drawing = parse(svg);
    boolean wide = wide(drawing.getDocumentElement());
    Document page =
        parse(
            "<html xmlns=\"http://www.w3.org/1999/xhtml\"><head><title/><style>@page { size: A4 "
                + (wide ? "landscape" : "portrait")
                + "; margin: 10mm; } body { margin: 0; } svg { display: block; width: "
                + (wide ? "270mm; height: 185mm" : "188mm; height: 270mm")
                + "; }</style></head><body/></html>");
    page.getElementsByTagName("title").item(0).setTextContent(title);
    Element copy = (Element) page.importNode(drawing.getDocumentElement(), true);
    NodeList styles = copy.getElementsByTagName("style");
    for (int i = 0; i < styles.getLength(); i++) {
      styles.item(i).setTextContent(PlainStyle.ofDrawings(styles.item(i).getTextContent()));
    }
    page.getElementsByTagName("body").item(0).appendChild(copy);
    return print(page);
  }

  private static boolean wide(Element svg) {
    String[] box = svg.getAttribute("viewBox").strip().split("\\s+");
    return box.length == 4 && Double.parseDouble(box[2]) >= Double.parseDouble(box[3]);
  }

  /**
   * The report without the workings, which would be hundreds of pages.
   *
   * @param html the report, which is well-formed XML too
   */
  public static byte[] report(String html) {
    Document page = parse(html.replaceFirst("(?i)<!DOCTYPE[^>]*>", ""));
    StringBuilder css = new StringBuilder();
    for (Element style : elements(page, "style")) {
      css.append(style.getTextContent());
      style.getParentNode().removeChild(style);
    }
    for (String gone : List.of("script", "nav", "dialog", "input", "label", "meta", "button")) {
      elements(page, gone).forEach(one -> one.getParentNode().removeChild(one));
    }
    for (Element section : elements(page, "section")) {
      if (section.getAttribute("id").equals("workings")) {
        section.getParentNode().removeChild(section);
      }
    }
    for (Element note : elements(page, "p")) {
      Node holder = note.getParentNode();
      if (note.getAttribute("class").equals("legend-note")
          && holder.getNodeName().equals("header")) {
        holder.removeChild(note);
      }
    }
    for (Element link : elements(page, "a")) {
      link.removeAttribute("href");
    }
    for (Element drawing : elements(page, "svg")) {
      Element style = page.createElementNS("http://www.w3.org/2000/svg", "style");
      style.setTextContent(PlainStyle.ofDrawings(css.toString()));
      drawing.insertBefore(style, drawing.getFirstChild());
    }
    Element style = page.createElementNS("http://www.w3.org/1999/xhtml", "style");
    style.setTextContent(PlainStyle.of(css.toString()) + text("report-pdf.css"));
    page.getElementsByTagName("head").item(0).appendChild(style);
    return print(page);
  }

  private static List<Element> elements(Document page, String name) {
    List<Element> elements = new ArrayList<>();
    NodeList found = page.getElementsByTagName(name);
    for (int i = 0; i < found.getLength(); i++) {
      Node node = found.item(i);
      elements.add((Element) node);
    }
    return elements;
  }

  private static String text(String name) {
    try (InputStream in = Pdf.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Document parse(String xml) {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    try {
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      return factory.newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
    } catch (ParserConfigurationException | IOException e) {
      throw new IllegalStateException("every Java reads XML from memory", e);
    } catch (SAXException e) {
      throw new IllegalStateException("a sheet of ours is not well-formed", e);
    }
  }

  private static byte[] print(Document page) {
    XRLog.setLoggingEnabled(false);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      PdfRendererBuilder builder = new PdfRendererBuilder();
      builder.useSVGDrawer(new BatikSVGDrawer());
      builder.useFont(() -> Pdf.class.getResourceAsStream(FONT), "Sheet");
      builder.useFastMode();
      // A sheet holds all it needs; nothing is fetched, whatever a name in it may say.
      builder.useUriResolver((base, uri) -> null);
      builder.withW3cDocument(page, "");
      builder.withProducer("Grovewright");
      builder.toStream(bytes);
      builder.run();
    } catch (IOException e) {
      throw new UncheckedIOException("the PDF cannot be written", e);
    }
    return bytes.toByteArray();
  }
}
