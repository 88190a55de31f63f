/**
 * What a build's intent says of the region where it is used, in the words that a builder is shown. Figures and judgement are in the
 * limit tables below; here is only which region is meant, and where its rules in force are to be read. Start at {@link
 * galena.build.rules.LocalRules}.
 */
@NullMarked
package galena.build.rules;

import org.jspecify.annotations.NullMarked;
