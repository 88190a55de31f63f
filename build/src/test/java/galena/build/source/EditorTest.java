package galena.build.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class EditorTest {
    /** Comments, odd spacing, quotes, signs outside ASCII and beyond the basic plane, blank lines, a trailing blank. */
    private static final String NASTY =
            """
            galena:   1    # version

            name: 'Reading-room  sender' # it''s ours 𝛺
            parts:  # µ Ω °
                Lt: { coil: 180 µH ,q:  85 @ 1 MHz}# wound by hand
                Ct: {trimmer: 5..60 pF, set: 40 %, # turned on Sunday
                     from: rail, to: drain }
                R1:
                      resistor: "4k7"\s\s\s
                      from: rail
                      to:
            strays:
            - {from: drain, capacitance: 3 pF}
            notes: |
              first
              second
            """;

    private static SourceFile edited(String text, Edit edit) throws BadInputException {
        return Editor.apply(Texts.file(text), edit);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "galena         | 1                     | 2          | galena:   1            | galena:   2",
                "name           | Reading-room  sender  | It's 1: a  | 'Reading-room  sender' | 'It''s 1: a'",
                "parts.Lt.coil  | 180 µH                | 0.18 mH    | 180 µH                 | 0.18 mH",
                "parts.Lt.q     | 85 @ 1 MHz            | 90 @ 1 MHz | 85 @ 1 MHz             | 90 @ 1 MHz",
                "parts.Ct.set   | 40 %                  | 43.2 %     | 40 %                   | 43.2 %",
                "parts.R1.resistor  | 4k7               | 5k6        | \"4k7\"                | \"5k6\"",
                "parts.R1.to    | ``                    | source     | `          to:`        | `          to: source`",
                "strays[1].capacitance | 3 pF           | 3.5 pF     | 3 pF                   | 3.5 pF",
            })
    void one_value_changes_and_no_other_byte(String path, String before, String after, String old, String now)
            throws BadInputException {
        for (String file : variants()) {
            SourceFile changed = edited(file, Edit.change(path, before, after));
            assertThat(Texts.text(changed)).isEqualTo(replaceOnce(file, old, now));
            SourceFile back =
                    Editor.apply(changed, Edit.change(path, before, after).undo());
            assertThat(Texts.text(back)).isEqualTo(before.isEmpty() ? replaceOnce(file, "to:", "to: \"\"") : file);
        }
    }

    @Test
    void a_value_that_needs_quotes_gets_them_and_keeps_them() throws BadInputException {
        SourceFile changed = edited("a: {to: drain }", Edit.change("a.to", "drain", "{x}"));
        assertThat(Texts.text(changed)).isEqualTo("a: {to: \"{x}\" }");
        changed = Editor.apply(changed, Edit.change("a.to", "{x}", "drain"));
        assertThat(Texts.text(changed)).isEqualTo("a: {to: \"drain\" }");
    }

    /** As it is, with carriage returns, with a byte order mark, with both. */
    private static String[] variants() {
        String windows = NASTY.replace("\n", "\r\n");
        return new String[] {NASTY, windows, "\uFEFF" + NASTY, "\uFEFF" + windows};
    }

    private static String replaceOnce(String text, String old, String now) {
        int at = old.equals("to:") ? text.indexOf("          to:") + 10 : text.indexOf(old);
        return text.substring(0, at) + now + text.substring(at + old.length());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "parts.Lt.set      | 50 % | 85 @ 1 MHz}             | 85 @ 1 MHz, set: 50 %}",
                "parts.Ct.tempco   | NP0  | to: drain }             | to: drain, tempco: NP0 }",
                "strays[1].to      | x    | 3 pF}                   | 3 pF, to: x}",
            })
    void a_key_is_added_in_braces_and_taken_out_again(String path, String value, String old, String now)
            throws BadInputException {
        for (String file : variants()) {
            Edit edit = Edit.add(path, value);
            SourceFile changed = edited(file, edit);
            assertThat(Texts.text(changed)).isEqualTo(replaceOnce(file, old, now));
            assertThat(Texts.text(Editor.apply(changed, edit.undo()))).isEqualTo(file);
        }
    }

    @Test
    void a_key_is_added_on_a_line_of_its_own_and_taken_out_again() throws BadInputException {
        for (String file : variants()) {
            String end = file.contains("\r\n") ? "\r\n" : "\n";
            Edit edit = Edit.add("parts.R1.tolerance", "5 %");
            SourceFile changed = edited(file, edit);
            String line = "          to:" + end;
            assertThat(Texts.text(changed)).isEqualTo(replaceOnce(file, line, line + "          tolerance: 5 %" + end));
            assertThat(Texts.text(Editor.apply(changed, edit.undo()))).isEqualTo(file);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"a: 1", "a: 1 # note", "a: 1\n", "a: |\n  long\n", "a: {b: 1}\n# last words\n", "a: 1\r\nb: 2"})
    void a_key_is_added_at_the_end_of_any_file(String text) throws BadInputException {
        Edit edit = Edit.add("z", "26");
        SourceFile changed = edited(text, edit);
        assertThat(Texts.text(changed)).contains("z: 26").startsWith(text.substring(0, 4));
        assertThat(Texts.text(Editor.apply(changed, edit.undo()))).isEqualTo(text);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "a: b",
                "#x",
                "x #y",
                "@x",
                "%x",
                "- x",
                "-",
                "?",
                "*a",
                "&a",
                "!a",
                "|",
                ">",
                "[x]",
                "{x}",
                "a, b",
                "'",
                "\"",
                "it's",
                "\\",
                "~",
                "null",
                "true",
                "5..60 pF",
                "85 @ 1 MHz",
                "-10..+50 °C",
                "2 %",
                "µ",
                "𝛺",
                "tab\there",
                "x:",
                "trailing ",
                "---",
                "...",
                ".5 V",
                "+5 V",
                "a\u0085b",
                "a\u2028b",
                "\uFEFFx"
            })
    void any_text_survives_being_written(String value) throws BadInputException {
        for (String file : new String[] {
            "a: {k: x, m: y}\n", "a:\n  k: x\n  m: y\n", "a: {k: 'x', m: y}\n", "a: {k: \"x\", m: y}\n"
        }) {
            SourceFile changed = edited(file, Edit.change("a.k", "x", value));
            Node node = YamlReader.read(changed, new Problems()).find("a.k").orElseThrow();
            assertThat(((Node.Scalar) node).text()).isEqualTo(value);
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "parts.Ct.set    | 41 % | 50 % | is \"40 %\" and no longer \"41 %\"",
                "parts.Cx.set    | 41 % | 50 % | is not in the file",
                "parts.Ct        | x    | y    | is a group of keys, not a single value",
                "strays          | x    | y    | is a list, not a single value",
                "notes           | 'first\nsecond\n' | y | is a text over several lines, which is changed in an editor",
                "parts.Ct.set    |      | 50 % | is already in the file",
                "parts.Cx.set    |      | 50 % | has no group to stand in",
                "name.x          |      | 50 % | has no group with keys to stand in",
                "parts.Ct.set    | 40 % |      | ",
                "galena          | 1    |      | shares its line with something else, which would be lost",
                "parts.R1.resistor | 4k7 |     | ",
            })
    void an_edit_that_would_lose_something_is_refused(String path, String before, String after, String found) {
        Edit edit = new Edit(path, java.util.Optional.ofNullable(before), java.util.Optional.ofNullable(after));
        if (found == null) {
            assertThat(catchThrowableOfType(BadInputException.class, () -> edited(NASTY, edit)))
                    .isNull();
            return;
        }
        BadInputException bad = catchThrowableOfType(BadInputException.class, () -> edited(NASTY, edit));
        assertThat(bad.problems().get(0).found()).isEqualTo(found);
        assertThat(bad.problems().get(0).path()).isEqualTo(path);
    }
}
