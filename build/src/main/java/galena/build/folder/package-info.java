/**
 * A build folder: what stands in it, at which fixed places, and a build as checked records.
 *
 * <p>{@code build.yaml} is the build; {@code drawer.yaml} the builder's parts, {@code stations.yaml} the stations heard,
 * {@code bench/log.yaml} the readings, {@code calibration.yaml} an accepted calibration, {@code packet/} what is published,
 * {@code .cache/} what may be deleted at any time ({@link galena.build.folder.Layout}). Each file has one form, from which
 * both its reader and its JSON Schema are made ({@code galena/schema/*.json} among the resources).
 *
 * <p>Promised: what comes out passed every check that needs the files alone; every problem names file, line, column and
 * remedy, and all of them are reported together. Checks that need the circuit's graph or a device's data are made in {@link
 * galena.build.wiring}. Values are kept as written, with their SI value beside.
 *
 * <p>Open {@link galena.build.folder.BuildFolder} first, then {@link galena.build.folder.Build}.
 */
@NullMarked
package galena.build.folder;

import org.jspecify.annotations.NullMarked;
