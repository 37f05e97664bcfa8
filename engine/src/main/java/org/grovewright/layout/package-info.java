/**
 * Where things stand and whether they can live together there.
 *
 * <p>A young tree looks lost in its space; ten years later its crown decides who gets light and
 * whether the wall stays dry. So every distance is judged by the size the plants will have, and a
 * conflict says in which year of growth it begins. Main plants keep their usual spacing and their
 * crowns apart; companions and ground covers may live under a main plant's crown, only not in the
 * collar of bare ground round its trunk. Plants keep clear of fixed things by the distance the
 * owner or the catalogue gives, and inside the boundary.
 *
 * <p>{@link org.grovewright.layout.LayoutCheck} does the judging and hands back a {@link
 * org.grovewright.layout.LayoutReport} of {@link org.grovewright.layout.Conflict}s and remarks.
 * {@link org.grovewright.layout.Terrain} gives the height and slope of the ground from the heights
 * the owner measured, {@link org.grovewright.layout.Crown} the crown of one plant at any time of
 * the plan, and {@link org.grovewright.layout.Shapes} the model's shapes as plane geometry.
 */
package org.grovewright.layout;
