/**
 * The ground about each plant: holes, backfill, bought mix, amendments, mulch and feeding.
 *
 * <p>A container plant goes into a hole as deep as its root ball and two to three times as wide.
 * What is dug swells when loosened; what goes back is the hole less the ball, part of it bought mix
 * that settles and so is bought with an allowance. Bulk goods are sold by volume or by mass and are
 * carried in barrows, so every amount is known both ways. Where water leaves a test hole slowly, or
 * rock lies near, plants are set high on a mound instead. Mulch is spread as rings about the stems
 * which grow together along a row; the overlap is counted once and the collars stay bare. Feeding
 * follows nitrogen: from the year-one rate to the mature rate as the crown grows.
 *
 * <p>{@link org.grovewright.ground.GroundPlan} is the whole of it. {@link
 * org.grovewright.ground.PlantGround} is the hole of one plant, {@link
 * org.grovewright.ground.MulchPlan} the mulch, {@link org.grovewright.ground.Feeding} one feeding
 * of one plant; {@link org.grovewright.ground.BulkLoad} turns volume into mass and back and {@link
 * org.grovewright.ground.Carrier} counts loads.
 */
package org.grovewright.ground;
