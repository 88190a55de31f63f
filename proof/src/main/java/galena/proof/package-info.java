/**
 * Checks against the outside. A test that compares Galena with a standard, a handbook table, a closed form, a worked
 * example, another library or the custom of the trade does so through {@link galena.proof.Published}, which asserts
 * and keeps a line; {@link galena.proof.ValidationPage} gathers the lines of all modules into {@code
 * docs/validation.md}. Nothing here is used outside tests, and nothing here knows any other module.
 */
@NullMarked
package galena.proof;

import org.jspecify.annotations.NullMarked;
