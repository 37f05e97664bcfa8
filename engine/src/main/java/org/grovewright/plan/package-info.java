/**
 * The order in which the subjects are asked, and nothing else: {@link org.grovewright.plan.Planner}
 * turns a grove and a catalogue into a {@link org.grovewright.plan.Plan}.
 */
package org.grovewright.plan;
