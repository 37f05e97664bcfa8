/**
 * What to buy: the goods all parts of the plan ask for, as packs with their cost.
 *
 * <p>Nobody sells 43.7 m of pipe. Goods come in coils, lengths, bags and loads, so buying adds up
 * what is needed, allows for waste, takes off what lies in the shed and rounds up to packs. Pipe is
 * harder than bulk goods, because pieces must be cut from whole coils or lengths and every length
 * leaves an off-cut: the cutting stock problem, solved by the package's own search. {@link
 * org.grovewright.buying.ShoppingList} is the result; a price nobody knows stays unknown, it never
 * counts as nothing.
 */
package org.grovewright.buying;
