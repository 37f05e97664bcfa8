package org.grovewright.web.views;

/**
 * A remark of the plan.
 *
 * @param code stable name of its kind
 * @param shortfall whether the plan falls short there
 * @param subject what it is about, empty for the whole grove
 * @param text the sentence
 */
public record Remark(String code, boolean shortfall, String subject, String text) {}
