/**
 * What may be written in a file: the keys of a group, the type of each value, and the sentence that states the rule. One
 * table of {@link galena.build.form.Form}s serves the reader, which checks a file against it and reports every problem at
 * once, and the published JSON Schema (draft 2020-12), so that the two can't drift apart.
 *
 * <p>What may go in: value types that several files share. What a transmitter needs is not known here; the forms
 * themselves stand beside the files that they describe. What comes out of a reading, {@link galena.build.form.Filled},
 * holds only values that passed; a group with a problem inside is not handed on.
 *
 * <p>Open {@link galena.build.form.Form} first.
 */
@NullMarked
package galena.build.form;

import org.jspecify.annotations.NullMarked;
