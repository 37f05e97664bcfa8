/**
 * Help with words that are nearly right. People mistype; a program that knows all allowed words can
 * say which one was probably meant ({@link org.grovewright.formats.words.Nearest}), and a long list
 * of mistakes is cut to what can be read ({@link org.grovewright.formats.words.Listing}).
 */
package org.grovewright.formats.words;
