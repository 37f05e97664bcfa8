/**
 * The languages in which an owner can read a plan.
 *
 * <p>Two kinds of text need translating. The words of the screens stand in bundles for each
 * language, {@code messages_<tag>.properties} for the frame, the map and the first plan and {@code
 * pages_<tag>.properties} for the rest, and are called by their keys. What the engine and the
 * catalogue say (remarks, tasks, names of plants and parts, workings) is plain English made where
 * the matter is known; {@link org.grovewright.texts.Phrases} holds its translations by the English
 * sentence, in a file of the open PO format, {@code phrases_<tag>.po}. What is wrong with a file or
 * a request is a {@link org.grovewright.texts.Sentence}, which keeps names and typed words apart
 * from its own words and is translated by these in the same file. A new language is those files and
 * its tag in {@link org.grovewright.texts.Language}.
 */
package org.grovewright.texts;
