package io.github.platenwire.report;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Base64;
import java.util.Iterator;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * A photograph made small enough to stand in a page, upright, as a JPEG without anything else of
 * the file that it comes from. Immutable.
 *
 * @param width in pixels
 * @param height in pixels
 * @param address the picture itself, as an address for a page
 */
record ScaledPicture(int width, int height, String address) {
  private static final float QUALITY = 0.85f;

  /**
   * Scales a picture down; one that is smaller keeps its size.
   *
   * @param file the bytes of any file
   * @param longestSide of what is made, in pixels
   * @return empty if the file is no picture that can be read
   */
  static Optional<ScaledPicture> of(byte[] file, int longestSide) {
    try {
      Optional<BufferedImage> read = read(file, longestSide);
      if (read.isEmpty()) {
        return Optional.empty();
      }
      BufferedImage upright = draw(read.get(), PictureTurn.of(file), longestSide);
      String data = Base64.getEncoder().encodeToString(jpeg(upright));
      return Optional.of(
          new ScaledPicture(
              upright.getWidth(), upright.getHeight(), "data:image/jpeg;base64," + data));
    } catch (IOException | RuntimeException e) {
      // Readers of pictures throw anything at bytes that are not as they should be.
      return Optional.empty();
    }
  }

  /** Reads no more pixels of a large picture than are needed. */
  private static Optional<BufferedImage> read(byte[] file, int longestSide) throws IOException {
    try (ImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(file))) {
      Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
      if (!readers.hasNext()) {
        return Optional.empty();
      }
      ImageReader reader = readers.next();
      try {
        reader.setInput(in, /* seekForwardOnly= */ true, /* ignoreMetadata= */ true);
        int longest = Math.max(reader.getWidth(0), reader.getHeight(0));
        int every = Math.max(1, longest / (2 * longestSide));
        ImageReadParam param = reader.getDefaultReadParam();
        param.setSourceSubsampling(every, every, 0, 0);
        return Optional.of(reader.read(0, param));
      } finally {
        reader.dispose();
      }
    }
  }

  private static BufferedImage draw(BufferedImage image, PictureTurn turn, int longestSide) {
    double scale =
        Math.min(1, longestSide / (double) Math.max(image.getWidth(), image.getHeight()));
    int across = Math.max(1, (int) Math.round(image.getWidth() * scale));
    int down = Math.max(1, (int) Math.round(image.getHeight() * scale));
    boolean lying = turn.isOnItsSide();
    BufferedImage made =
        new BufferedImage(lying ? down : across, lying ? across : down, BufferedImage.TYPE_INT_RGB);
    Graphics2D canvas = made.createGraphics();
    try {
      canvas.setColor(java.awt.Color.WHITE);
      canvas.fillRect(0, 0, made.getWidth(), made.getHeight());
      canvas.setRenderingHint(
          RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
      canvas.setRenderingHint(RenderingHints.KEY_RENDERING, RenderingHints.VALUE_RENDER_QUALITY);
      AffineTransform upright = turn.upright(across, down);
      upright.scale(across / (double) image.getWidth(), down / (double) image.getHeight());
      canvas.drawImage(image, upright, null);
    } finally {
      canvas.dispose();
    }
    return made;
  }

  private static byte[] jpeg(BufferedImage image) throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      writer.setOutput(out);
      ImageWriteParam param = writer.getDefaultWriteParam();
      param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      param.setCompressionQuality(QUALITY);
      writer.write(null, new IIOImage(image, null, null), param);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }
}
