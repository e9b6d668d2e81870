package io.github.platenwire.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Base64;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScaledPictureTest {
  /** Blue, with a red corner where the first row of pixels begins. */
  private static byte[] photograph(String format) throws IOException {
    BufferedImage image = new BufferedImage(1200, 800, BufferedImage.TYPE_INT_RGB);
    Graphics2D canvas = image.createGraphics();
    canvas.setColor(Color.BLUE);
    canvas.fillRect(0, 0, 1200, 800);
    canvas.setColor(Color.RED);
    canvas.fillRect(0, 0, 300, 200);
    canvas.dispose();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(image, format, bytes);
    return bytes.toByteArray();
  }

  /** The same held in another way: an Exif segment with one entry, put behind the first marker. */
  private static byte[] turned(int orientation) throws IOException {
    byte[] plain = photograph("jpeg");
    byte[] segment = {
      (byte) 0xFF,
      (byte) 0xE1,
      0,
      34,
      'E',
      'x',
      'i',
      'f',
      0,
      0,
      'M',
      'M',
      0,
      42,
      0,
      0,
      0,
      8,
      0,
      1,
      0x01,
      0x12,
      0,
      3,
      0,
      0,
      0,
      1,
      0,
      (byte) orientation,
      0,
      0,
      0,
      0,
      0,
      0
    };
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.write(plain, 0, 2);
    bytes.write(segment, 0, segment.length);
    bytes.write(plain, 2, plain.length - 2);
    return bytes.toByteArray();
  }

  private static BufferedImage shown(ScaledPicture picture) throws IOException {
    String data = picture.address().substring("data:image/jpeg;base64,".length());
    return ImageIO.read(new ByteArrayInputStream(Base64.getDecoder().decode(data)));
  }

  /** Where the first row and the first column of pixels are: Exif 2.3, tag 274 (from memory). */
  @ParameterizedTest
  @CsvSource({
    "1, top left", "2, top right", "3, bottom right", "4, bottom left",
    "5, top left", "6, top right", "7, bottom right", "8, bottom left"
  })
  void of_cameraHeldInAnyWay_standsUpright(int orientation, String corner) throws IOException {
    ScaledPicture picture = ScaledPicture.of(turned(orientation), 300).orElseThrow();
    assertThat(picture.width()).isEqualTo(orientation < 5 ? 300 : 200);
    assertThat(picture.height()).isEqualTo(orientation < 5 ? 200 : 300);
    BufferedImage image = shown(picture);
    int x = corner.endsWith("left") ? 20 : picture.width() - 20;
    int y = corner.startsWith("top") ? 20 : picture.height() - 20;
    Color there = new Color(image.getRGB(x, y));
    assertThat(there.getRed()).as(corner).isGreaterThan(200);
    Color opposite = new Color(image.getRGB(picture.width() - x, picture.height() - y));
    assertThat(opposite.getBlue()).isGreaterThan(200);
  }

  @Test
  void of_smallPicture_keepsItsSize() throws IOException {
    ScaledPicture picture = ScaledPicture.of(photograph("png"), 5000).orElseThrow();
    assertThat(picture.width()).isEqualTo(1200);
    assertThat(shown(picture).getHeight()).isEqualTo(800);
  }

  @Test
  void of_bytesThatAreNoPicture_isEmptyAndNeverThrows() throws IOException {
    assertThat(ScaledPicture.of(new byte[] {1, 2, 3}, 300)).isEmpty();
    assertThat(ScaledPicture.of(new byte[0], 300)).isEmpty();
    byte[] whole = turned(6);
    for (int length = 0; length < 200; length++) {
      byte[] cut = java.util.Arrays.copyOf(whole, length);
      assertThat(ScaledPicture.of(cut, 300)).isEmpty();
    }
  }
}
