/** JMH benchmarks and side-by-side comparisons. */
package org.grovewright.bench;
