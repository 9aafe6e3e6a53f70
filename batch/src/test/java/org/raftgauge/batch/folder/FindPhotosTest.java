// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.folder;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FindPhotosTest {
  @TempDir Path root;

  @Test
  void photosAreToldByTheirEndingsInAnyCase() throws IOException {
    write("a.jpg", "b.JPG", "c.Jpeg", "d.png", "e.tif", "f.TIFF", "g.heic", "jpg", "h.jpg.txt");
    PhotoFolder found = FindPhotos.in(root);
    assertEquals(List.of("a.jpg", "b.JPG", "c.Jpeg", "d.png", "e.tif", "f.TIFF"), found.photos());
    assertEquals(List.of("g.heic", "h.jpg.txt", "jpg"), found.notPhotos());
  }

  @Test
  void endingsAreToldTheSameWayInTurkey() throws IOException {
    // In Turkish the small letter of I is a dotless i, so TIF would not become tif.
    Locale before = Locale.getDefault();
    Locale.setDefault(new Locale.Builder().setLanguage("tr").build());
    try {
      write("A.TIF");
      assertEquals(List.of("A.TIF"), FindPhotos.in(root).photos());
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void foldersBelowAreSearchedAndPathsHaveForwardSlashes() throws IOException {
    write("2026-04-11/DR-1.jpg", "2026-04-11/evening/late/DR-2.jpg", "DR-0.jpg");
    assertEquals(
        List.of("2026-04-11/DR-1.jpg", "2026-04-11/evening/late/DR-2.jpg", "DR-0.jpg"),
        FindPhotos.in(root).photos());
  }

  @Test
  void theOrderIsThatOfCodePointsNotOfAnAlphabet() throws IOException {
    // U+1F331 (seedling) is a pair of UTF-16 units from D800 on, below U+FF21 (wide A), but comes
    // after it by code point. An alphabet would put B behind a.
    write("a.jpg", "B.jpg", "\uff21.jpg", "\ud83c\udf31.jpg", "10.jpg", "9.jpg");
    assertEquals(
        List.of("10.jpg", "9.jpg", "B.jpg", "a.jpg", "\uff21.jpg", "\ud83c\udf31.jpg"),
        FindPhotos.in(root).photos());
  }

  @Test
  void namesMayHaveBlanksAndAnyScript() throws IOException {
    write("pond 2/raft 7 (copy).jpg", "\u751f\u83dc/\u6c34\u57f9.png", "s\u00e1b/al\u0131.tif");
    PhotoFolder found = FindPhotos.in(root);
    assertEquals(
        List.of(
            "pond 2/raft 7 (copy).jpg", "s\u00e1b/al\u0131.tif", "\u751f\u83dc/\u6c34\u57f9.png"),
        found.photos());
    for (String photo : found.photos()) {
      assertEquals("x", Files.readString(found.fileOf(photo)));
    }
  }

  @Test
  void picturesPaintedToTeachFromAreNoPhotos() throws IOException {
    // teach --start writes NAME.labels.png beside the photo.
    write("sub/DR-1.jpg", "sub/DR-1.labels.png", "DR-2.LABELS.PNG", "labels.png");
    PhotoFolder found = FindPhotos.in(root);
    assertEquals(List.of("labels.png", "sub/DR-1.jpg"), found.photos());
    assertEquals(List.of(), found.notPhotos());
    assertEquals(
        List.of("sub/DR-1.jpg"),
        FindPhotos.among(List.of("sub/DR-1.labels.png", "sub/DR-1.jpg", "sub/.DR-3.jpg")));
  }

  @Test
  void hiddenAndExpectedFilesArePassedOver() throws IOException {
    write(
        "manifest.csv",
        "sub/Manifest.csv",
        "Thumbs.db",
        "desktop.ini",
        ".DS_Store",
        "._a.jpg",
        ".thumbnails/a.jpg",
        "a.jpg");
    PhotoFolder found = FindPhotos.in(root);
    assertEquals(List.of("a.jpg"), found.photos());
    assertEquals(List.of(), found.notPhotos());
  }

  @Test
  void aHiddenPhotoFolderItselfIsSearched() throws IOException {
    write(".night/a.jpg");
    assertEquals(List.of("a.jpg"), FindPhotos.in(root.resolve(".night")).photos());
  }

  @Test
  void anEmptyFolderHasNoPhotos() throws IOException {
    PhotoFolder found = FindPhotos.in(root);
    assertEquals(List.of(), found.photos());
    assertEquals(List.of(), found.notPhotos());
  }

  @Test
  void aLinkThatLeadsRoundInACircleIsWalkedOnce() throws IOException {
    write("a/b/one.jpg");
    link(root.resolve("a/b/up"), root.resolve("a"));
    PhotoFolder found = FindPhotos.in(root);
    assertEquals(List.of("a/b/one.jpg"), found.photos());
    assertEquals(List.of(), found.unreadable());
  }

  @Test
  void aLinkToAFolderAboveIsSaidNotWalked() throws IOException {
    write("evening/one.jpg", "other/two.jpg");
    Path evening = root.resolve("evening");
    link(evening.resolve("all"), root);
    link(evening.resolve("disk"), root.getRoot());
    PhotoFolder found = FindPhotos.in(evening);
    assertEquals(List.of("one.jpg"), found.photos());
    assertEquals(List.of("all", "disk"), found.unreadable());
  }

  @Test
  void aLinkedFolderIsFollowed(@TempDir Path elsewhere) throws IOException {
    Files.writeString(elsewhere.resolve("card.jpg"), "x");
    link(root.resolve("card"), elsewhere);
    assertEquals(List.of("card/card.jpg"), FindPhotos.in(root).photos());
  }

  @Test
  void aLinkToNowhereThatIsNamedLikeAPhotoCannotBeRead() throws IOException {
    link(root.resolve("gone.jpg"), root.resolve("nowhere.jpg"));
    link(root.resolve("gone.txt"), root.resolve("nowhere.jpg"));
    PhotoFolder found = FindPhotos.in(root);
    assertEquals(List.of(), found.photos());
    assertEquals(List.of("gone.txt"), found.notPhotos());
    assertEquals(List.of("gone.jpg"), found.unreadable());
  }

  @Test
  void aFolderNamedLikeAPhotoIsAFolder() throws IOException {
    write("raft.jpg/one.png");
    assertEquals(List.of("raft.jpg/one.png"), FindPhotos.in(root).photos());
  }

  @Test
  void whatIsNoFolderIsAnError() throws IOException {
    write("a.jpg");
    Path file = root.resolve("a.jpg");
    assertEquals(
        file.toString(),
        assertThrows(NotDirectoryException.class, () -> FindPhotos.in(file)).getMessage());
    Path missing = root.resolve("missing");
    assertEquals(
        missing.toString(),
        assertThrows(NoSuchFileException.class, () -> FindPhotos.in(missing)).getMessage());
  }

  private void write(String... names) throws IOException {
    Charset fileNames = Charset.forName(System.getProperty("sun.jnu.encoding"));
    for (String name : names) {
      Assumptions.assumeTrue(
          fileNames.newEncoder().canEncode(name), "file names are " + fileNames + " here");
      Path file = root.resolve(name);
      Files.createDirectories(file.getParent());
      Files.writeString(file, "x");
    }
  }

  private static void link(Path from, Path to) {
    try {
      Files.createSymbolicLink(from, to);
    } catch (IOException | UnsupportedOperationException e) {
      Assumptions.abort("this system makes no links: " + e.getMessage());
    }
  }
}
