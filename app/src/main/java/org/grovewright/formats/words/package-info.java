/**
 * Help with words that are nearly right. People mistype; a program that knows all allowed words can
 * say which one was probably meant ({@link org.grovewright.formats.words.Nearest}).
 */
package org.grovewright.formats.words;
