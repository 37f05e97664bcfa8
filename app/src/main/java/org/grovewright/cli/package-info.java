/**
 * The commands of the program.
 *
 * <p>Every command prints its result, and nothing else, to standard output; what it has to say
 * besides goes to standard error, so that results can be piped on. The exit code says how it went:
 * see {@link org.grovewright.cli.ExitCode}. {@link org.grovewright.cli.GrovewrightCommand} is where
 * the program starts.
 */
package org.grovewright.cli;
