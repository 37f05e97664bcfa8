package org.grovewright.sheets;

import java.io.StringReader;
import javax.xml.XMLConstants;
import javax.xml.namespace.QName;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.xpath.XPathConstants;
import javax.xml.xpath.XPathExpressionException;
import javax.xml.xpath.XPathFactory;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;

/** Reads drawings and pages back in, as strictly as XML does. */
final class XmlChecks {
  private XmlChecks() {}

  static Document parse(String xml) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
    return factory.newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
  }

  static Object find(Document document, String path, QName type) throws XPathExpressionException {
    return XPathFactory.newInstance().newXPath().evaluate(path, document, type);
  }

  static String text(Document document, String path) throws XPathExpressionException {
    return (String) find(document, path, XPathConstants.STRING);
  }
}
