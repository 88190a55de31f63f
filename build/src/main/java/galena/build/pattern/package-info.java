/**
 * Known-good arrangements to start a build from: complete, commented {@code build.yaml} files that hold for every device their
 * data sheets admit, from −10 to +50 °C and from a fresh battery to a flat one. Open {@link galena.build.pattern.Pattern}
 * first. The files lie beside it among the resources; what is promised of them is tested by prediction, file by file.
 *
 * <p>Absent on purpose: anything that changes a pattern to fit an intent. That is proposing, and works on a build.
 */
@NullMarked
package galena.build.pattern;

import org.jspecify.annotations.NullMarked;
