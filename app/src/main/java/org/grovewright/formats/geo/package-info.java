/**
 * Places on the earth. A boundary drawn on a map comes as longitude and latitude on the WGS 84
 * ellipsoid; the plan needs metres on a flat sketch. An azimuthal equidistant projection about a
 * corner of the land keeps distances from that corner exact, and over a few hundred metres the rest
 * is true to better than a millimetre.
 *
 * <p>{@link org.grovewright.formats.geo.LocalPlane} projects both ways; {@link
 * org.grovewright.formats.geo.GeoJsonBoundary} reads the outline of a GeoJSON polygon (RFC 7946).
 */
package org.grovewright.formats.geo;
