package galena.desk;

import galena.desk.console.Terminal;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** Runs commands and keeps what they print. */
public final class Screen {
    private final Charset charset;
    private final ByteArrayOutputStream answers = new ByteArrayOutputStream();
    private final ByteArrayOutputStream remarks = new ByteArrayOutputStream();
    public final Terminal terminal;

    public Screen() {
        this(StandardCharsets.UTF_8);
    }

    public Screen(Charset charset) {
        this.charset = charset;
        terminal = new Terminal(
                new PrintStream(answers, false, charset),
                new PrintStream(remarks, true, charset),
                charset,
                false,
                false,
                80);
    }

    /** The exit code. */
    public int run(Object... arguments) {
        String[] words = new String[arguments.length];
        for (int k = 0; k < words.length; k++) words[k] = arguments[k].toString();
        return Galena.run(terminal, words);
    }

    public String answers() {
        return answers.toString(charset);
    }

    public String remarks() {
        return remarks.toString(charset);
    }
}
