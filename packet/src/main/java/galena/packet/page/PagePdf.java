package galena.packet.page;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.apache.pdfbox.pdmodel.PDDocument;

/** Prints a page to PDF: A4, tagged, its own font, drawings as lines, text that can be selected and searched. */
public final class PagePdf {
    /** A sans-serif face with Greek and arrows that the PDF library brings along. */
    private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

    /** Kept, because a logger that nobody holds forgets its level. The libraries tell of faults by exceptions. */
    private static final Logger FONTS = Logger.getLogger("org.apache.pdfbox");

    private PagePdf() {}

    /** What is printed: equal texts give files that look the same, so that one printed before need not be printed again. */
    public static String source(Page page) {
        return PageHtml.forPaper(page);
    }

    /** The whole file. @param source as {@link #source} gives it */
    public static byte[] of(String source) throws IOException {
        XRLog.listRegisteredLoggers().forEach(name -> XRLog.setLevel(name, Level.OFF));
        FONTS.setLevel(Level.SEVERE);
        try (ByteArrayOutputStream out = new ByteArrayOutputStream()) {
            PdfRendererBuilder builder = new PdfRendererBuilder();
            builder.useFastMode();
            builder.usePdfUaAccessibility(true);
            builder.useFont(PagePdf::font, "Packet", 400, FontStyle.NORMAL, true);
            builder.useSVGDrawer(new BatikSVGDrawer());
            builder.withProducer("Galena");
            builder.withHtmlContent(source, null);
            builder.toStream(out);
            builder.run();
            return out.toByteArray();
        }
    }

    private static InputStream font() {
        InputStream font = PDDocument.class.getResourceAsStream(FONT);
        if (font == null) throw new IllegalStateException("the PDF library lacks " + FONT);
        return font;
    }
}
