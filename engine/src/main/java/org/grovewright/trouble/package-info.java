/**
 * Trouble with a watering system: what would happen, and what has happened.
 *
 * <p>A watering system that works on paper meets spades, dirt, half-empty tanks and two more trees.
 * Each of these changes one thing in the pipe network, and every plant then gets another flow,
 * because all draw from the same pressure. Forwards, the changed network is solved and each plant
 * is set beside what it had and what it needs. Backwards, readings of meter, gauge and catch can
 * tell which change has happened: the pipe's roughness, the supply and the wear of the emitters are
 * fitted first, then every place is tried for a leak, a blockage or dirt, and the places are ranked
 * by how well each explains what was read.
 *
 * <p>{@link org.grovewright.trouble.WhatIfs} looks forwards and {@link
 * org.grovewright.trouble.Diagnosis} backwards.
 */
package org.grovewright.trouble;
