/**
 * JMH benchmarks of the answers a builder waits for, and the engine beside a general integrator ({@link galena.stopwatch.Waiting}). Open
 * {@link galena.stopwatch.SteadyStateBenchmark} first. Every benchmark
 * fails when there is no answer: a fast failure must not look like a fast answer.
 */
@NullMarked
package galena.stopwatch;

import org.jspecify.annotations.NullMarked;
