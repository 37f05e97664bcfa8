/**
 * The pages that answer an owner's questions, as data: what do I buy, what do I do today, how long
 * do I run the water, how is each plant doing.
 *
 * <p>Each page is a record made from a {@link org.grovewright.plan.Plan} and a {@link
 * org.grovewright.web.views.Voice} (language and units), and is sent to the browser as JSON as it
 * stands. A number is a {@link org.grovewright.web.views.Shown}: its text, and the id of the figure
 * whose working opens from it. Nothing is computed here.
 */
package org.grovewright.web.views;
