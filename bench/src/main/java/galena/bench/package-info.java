/**
 * What instruments say: captures, measures and reconciling them with the prediction.
 */
@NullMarked
package galena.bench;

import org.jspecify.annotations.NullMarked;
