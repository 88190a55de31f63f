/**
 * Records to words. For each answer one class writes the page that reads well in a terminal ({@link
 * galena.desk.writing.PredictionText}, open it first) and one the JSON that programs read ({@link
 * galena.desk.writing.PredictionJson}); both print the same record, and neither computes.
 *
 * <p>Promised: every figure stands with its interval or with the reason why there is none; JSON is described by a schema in {@code
 * galena/schema} and carries its version. Absent on purpose: files, options, physics.
 */
@NullMarked
package galena.desk.writing;

import org.jspecify.annotations.NullMarked;
