package io.github.platenwire.report;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;

/**
 * Prints a page to PDF: paged, tagged for screen readers, its font embedded. Nothing is fetched
 * from anywhere. Loads much code, so it is only touched where a PDF is wanted. Stateless.
 */
final class PdfPrinter {
  private static final String FAMILY = "Report Sans";

  /** What stands in the page itself is fetched from nowhere. */
  private static final String IN_THE_PAGE = "data:image/jpeg;base64,";

  private static final int REGULAR = 400;
  private static final int BOLD = 700;

  private PdfPrinter() {}

  /**
   * Writes a PDF; the stream stays open.
   *
   * @param xhtml of {@link Page#xhtml}
   * @throws IOException if it cannot be written
   */
  static void print(String xhtml, String producer, OutputStream out) throws IOException {
    XRLog.setLoggingEnabled(false);
    try (BatikSVGDrawer drawings = new BatikSVGDrawer()) {
      PdfRendererBuilder builder = new PdfRendererBuilder();
      builder.useFastMode();
      builder.useSVGDrawer(drawings);
      builder.usePdfUaAccessibility(true);
      for (ExternalResourceControlPriority when : ExternalResourceControlPriority.values()) {
        builder.useExternalResourceAccessControl(
            (address, kind) -> address.startsWith(IN_THE_PAGE), when);
      }
      font(builder, "/report/DejaVuSansCondensed.ttf", REGULAR);
      font(builder, "/report/DejaVuSansCondensed-Bold.ttf", BOLD);
      builder.withProducer(producer);
      builder.withHtmlContent(xhtml, null);
      builder.toStream(out);
      builder.run();
    }
  }

  private static void font(PdfRendererBuilder builder, String resource, int weight) {
    builder.useFont(() -> open(resource), FAMILY, weight, FontStyle.NORMAL, /* subset= */ true);
  }

  private static InputStream open(String resource) {
    InputStream in = PdfPrinter.class.getResourceAsStream(resource);
    if (in == null) {
      throw new IllegalStateException("the program lacks its part " + resource);
    }
    return in;
  }
}
