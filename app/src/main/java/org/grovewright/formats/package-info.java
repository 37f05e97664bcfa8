/**
 * What people write and what the program reads. A gardener states every number with the unit at
 * hand (a tap in psi, a row in feet, rain in millimetres); the subpackages turn such text into the
 * engine's SI records and back, and say in plain words where a text cannot be understood.
 */
package org.grovewright.formats;
