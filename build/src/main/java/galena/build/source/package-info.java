/**
 * Text files that builders write: read with the place of every key and value, complained about with that place, and
 * changed one value at a time.
 *
 * <p>What may go in: reading YAML 1.2 into a tree that knows its positions, problems and how they print, the nearest
 * spelling of a word, edits of the text, and the version of a file. What a key means is not known here.
 *
 * <p>Promised: lines and columns count from 1, columns in characters as an editor counts them; all problems that can be
 * known from one reading are reported together; an edit leaves every byte outside its value as it was, byte order mark and
 * line ends included, and is refused where that can't be proved by reading the result again; a file that changed on disk
 * since it was read is never overwritten.
 *
 * <p>Absent on purpose: anchors, aliases, tags and several documents in one file. They would make "this one value"
 * ambiguous, and are refused with their place. Quantities are texts to YAML, so every value is kept as written.
 *
 * <p>Source: YAML Ain't Markup Language, version 1.2.2 (2021), read by snakeyaml-engine. Open {@link
 * galena.build.source.SourceFile} first, then {@link galena.build.source.YamlReader}.
 */
@NullMarked
package galena.build.source;

import org.jspecify.annotations.NullMarked;
