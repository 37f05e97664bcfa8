/**
 * Groves in the files of other programs.
 *
 * <p>Land and plants go to and come from GeoJSON (RFC 7946), which maps read, and GPX 1.1, which
 * hand-held receivers read; both hold places on the earth, so the sketch is laid out from the place
 * the owner gave for its corner and turned to true north. The sheets of a plan go out as they are,
 * the map and the report also as PDF.
 *
 * <p>{@link org.grovewright.exchange.OnEarth} lays the sketch out, {@link
 * org.grovewright.exchange.GeoJson} and {@link org.grovewright.exchange.Gpx} write and read, {@link
 * org.grovewright.exchange.Pdf} prints, and {@link org.grovewright.exchange.ExportFile} lists all
 * there is to take away.
 */
package org.grovewright.exchange;
