/**
 * How much water each plant needs, and when.
 *
 * <p>The air asks for water: reference evapotranspiration is what a well-watered short grass would
 * give off under the weather of the place. A plant gives off a share of that which depends on its
 * kind and season (the crop coefficient) and on how much ground its crown covers (the density
 * coefficient), so a young tree needs little and a grown one much. Rain that stays in the root zone
 * is taken off, evaporation from the wetted soil comes on top, and the store of water in the root
 * zone says how many days a plant can go between waterings.
 *
 * <p>{@link org.grovewright.water.ReferenceEt} is the demand of the air with every step of its
 * calculation, {@link org.grovewright.water.ClimateEt} that of the twelve months of a climate, and
 * {@link org.grovewright.water.WaterNeeds} the need of each plant of a grove. Weather equations are
 * written in the units of their source, FAO Irrigation and Drainage Paper 56 (Allen and others
 * 1998): kPa, MJ per square metre and day, millimetres per day; names carry the unit where it is
 * not SI.
 */
package org.grovewright.water;
