package io.github.platenwire.lab;

import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The text of a table as a spreadsheet saved it, and what had to be found out to read it.
 *
 * @param text without byte order mark and without a {@code sep=} line
 * @param separator what stands between the cells: comma, semicolon or tab
 * @param lettersGuessed whether the bytes were no UTF-8 and were taken as Windows-1252, so that
 *     letters beyond ASCII are not certain
 */
record TableText(String text, char separator, boolean lettersGuessed) {
  /** First bytes of a ZIP file, which spreadsheet workbooks are (PKWARE APPNOTE 4.3.7). */
  private static final byte[] WORKBOOK = {'P', 'K', 3, 4};

  /**
   * A first line by which a file tells a spreadsheet its separator; spreadsheets do not show it.
   */
  private static final Pattern SEPARATOR_LINE =
      Pattern.compile(
          "\\A\"?sep=([,;\\t])\"?[ ,;\\t]*(\\r\\n|\\n|\\r|\\z)", Pattern.CASE_INSENSITIVE);

  private static final Charset WINDOWS_1252 = Charset.forName("windows-1252");

  static TableText of(byte[] bytes, String source) throws LabException {
    if (Arrays.equals(bytes, 0, Math.min(4, bytes.length), WORKBOOK, 0, 4)) {
      throw new LabException(
          source + ": this is a spreadsheet's own format; save the table as CSV (UTF-8)");
    }
    try {
      return of(TextFile.decode(bytes, StandardCharsets.UTF_8), false, source);
    } catch (CharacterCodingException noUtf8) {
      return ofOlderEncoding(bytes, source);
    }
  }

  private static TableText ofOlderEncoding(byte[] bytes, String source) throws LabException {
    boolean utf16 =
        bytes.length >= 2
            && ((bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xFE)
                || (bytes[0] == (byte) 0xFE && bytes[1] == (byte) 0xFF));
    try {
      return utf16
          ? of(TextFile.decode(bytes, StandardCharsets.UTF_16), false, source)
          : of(TextFile.decode(bytes, WINDOWS_1252), true, source);
    } catch (CharacterCodingException e) {
      throw new LabException(
          source + ": this is neither UTF-8 nor Windows text; save the table as CSV (UTF-8)", e);
    }
  }

  private static TableText of(String decoded, boolean lettersGuessed, String source)
      throws LabException {
    if (decoded.indexOf('\0') >= 0) {
      throw new LabException(source + ": this is no text file; save the table as CSV (UTF-8)");
    }
    String text = TextFile.withoutMark(decoded);
    Matcher told = SEPARATOR_LINE.matcher(text);
    return told.find()
        ? new TableText(text.substring(told.end()), told.group(1).charAt(0), lettersGuessed)
        : new TableText(text, separatorOf(text), lettersGuessed);
  }

  /** The separator that stands most often in the first line that is not blank, outside quotes. */
  private static char separatorOf(String text) {
    String header = text.lines().filter(line -> !line.isBlank()).findFirst().orElse("");
    String bare = header.replaceAll("\"[^\"]*\"", "");
    char most = ',';
    for (char candidate : new char[] {';', '\t'}) {
      if (count(bare, candidate) > count(bare, most)) {
        most = candidate;
      }
    }
    return most;
  }

  private static long count(String text, char wanted) {
    return text.chars().filter(c -> c == wanted).count();
  }
}
