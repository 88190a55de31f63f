/**
 * JMH benchmarks of the answers a builder waits for. Open {@link galena.stopwatch.SteadyStateBenchmark} first. Every benchmark
 * fails when there is no answer: a fast failure must not look like a fast answer.
 */
@NullMarked
package galena.stopwatch;

import org.jspecify.annotations.NullMarked;
