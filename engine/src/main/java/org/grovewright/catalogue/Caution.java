package org.grovewright.catalogue;

/**
 * A warning shown with the tasks it belongs to.
 *
 * @param key catalogue key
 * @param title a few words
 * @param text what to do, in plain sentences
 * @param source where the advice comes from
 */
public record Caution(String key, String title, String text, String source) {}
