/**
 * Pressure and flow in a network of pipes, from a few drippers to a hundred thousand.
 *
 * <p>Water flows from where its total head (elevation plus pressure, in metres of water) is high to
 * where it is low, and loses head to friction on the way. Two laws fix the answer: at every
 * junction as much water comes in as goes out, and along every pipe the head lost is the one its
 * flow causes. An emitter passes more water the higher the pressure behind it, so flows and
 * pressures must be found together. The global gradient method (Todini and Pilati, 1988, from
 * memory) does so by Newton's method on both laws at once: each step solves one symmetric, positive
 * definite linear system in the heads.
 *
 * <p>A {@link org.grovewright.hydraulics.Network} is built once and never changes; {@link
 * org.grovewright.hydraulics.Solver} checks it and prepares it; a {@link
 * org.grovewright.hydraulics.PreparedNetwork} holds the working arrays and solves again cheaply
 * after an edit; a {@link org.grovewright.hydraulics.Solution} is the answer, with how well both
 * laws are kept. {@link org.grovewright.hydraulics.EmitterCurve}, {@link
 * org.grovewright.hydraulics.SupplyCurve} and {@link org.grovewright.hydraulics.LossCurve} describe
 * parts by their published curves; {@link org.grovewright.hydraulics.Uniformity} says how evenly
 * the water comes out.
 *
 * <p>Units are SI throughout: metres of water for head and pressure, cubic metres per second for
 * flow.
 */
package org.grovewright.hydraulics;
