// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.raftgauge.batch.page.PngFile;
import org.raftgauge.batch.station.SlotPicture;
import org.raftgauge.batch.station.SlotText;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.photo.DecodePhoto;
import org.raftgauge.core.photo.DecodeResult;
import org.raftgauge.core.photo.DecodedPhoto;
import org.raftgauge.core.photo.UnreadablePhoto;
import org.raftgauge.core.plane.FindBoards;
import org.raftgauge.core.plane.ProposeSlots;
import org.raftgauge.core.plane.SlotProposal;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Proposes the slots of a fixed station. */
@Command(
    name = "slots",
    mixinStandardHelpOptions = true,
    header = "Proposes the slots of a fixed station from a photo.",
    description = {
      "%nFinds boards of the book's layouts side by side, writes a station file with a",
      "slot for each and a picture to check them by. A photo with empty boards or a",
      "young crop tells most. The station must be in the book with its lens and camera",
      "height."
    },
    synopsisHeading = "%nUsage:%n  ",
    parameterListHeading = "%nWhat to look at:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge station slots reference.jpg --book my-farm --station over-pond \\",
      "      --out over-pond.yaml",
      "",
      "Correct the file by hand before you use it: the picture shows what to correct."
    })
final class StationSlotsCommand implements Callable<Integer> {
  private final Console console;

  @Parameters(paramLabel = "PHOTO", description = "A photo with the boards in their places.")
  private Path photo;

  @Mixin private BookOptions options;

  private Path book;

  @Option(
      names = "--station",
      paramLabel = "STATION",
      required = true,
      description = "The station, as the book names it.")
  private String stationName;

  @Option(
      names = "--layout",
      paramLabel = "LAYOUT",
      description = "Layouts that may lie there. Default: all of the book without markers.")
  private List<String> layoutNames = new ArrayList<>();

  @Option(
      names = "--out",
      paramLabel = "FILE",
      required = true,
      description = "The station file to write; the picture goes beside it.")
  private Path out;

  StationSlotsCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    book = options.find(console);
    BookReading reading = CropBook.read(book);
    CropBook read = reading.book();
    Station station = NamedStation.of(reading, stationName);
    OutFiles.isNew("--out", out);
    List<Layout> layouts = layouts(read);
    DecodedPhoto decoded = decode();
    int width = decoded.image().width();
    int height = decoded.image().height();
    if (!FindBoards.hasShapeOf(station, width, height)) {
      throw problem(
          "PHOTO " + photo,
          String.format(
              Locale.ROOT,
              "is %d x %d px, the station says %d x %d: not the same shape",
              width,
              height,
              station.imageWidthPx(),
              station.imageHeightPx()),
          "take a photo with that station's camera, uncropped, or mend the station file");
    }
    List<SlotProposal> slots = ProposeSlots.in(decoded.image(), station, layouts);
    if (slots.isEmpty()) {
      throw problem(
          "PHOTO " + photo,
          "shows no whole board of "
              + String.join(", ", layouts.stream().map(Layout::name).toList()),
          "check layout, lens and camera height, or take a photo with emptier boards");
    }
    SlotText.lines(slots).forEach(console.out()::println);
    OutFiles.makeParent(out);
    Files.writeString(
        out,
        SlotText.stationFile(
            station, slots, new SlotText.Reference(photo.getFileName().toString(), width)));
    Path picture = out.resolveSibling(OutFiles.stem(out) + "-slots.png");
    PngFile.write(SlotPicture.draw(decoded.image(), slots), picture);
    console.out().println("Slots    " + out);
    console.out().println("Picture  " + picture);
    return ExitCode.DONE;
  }

  private List<Layout> layouts(CropBook read) throws InputException {
    List<Layout> layouts = new ArrayList<>();
    for (String name : layoutNames) {
      if (!read.layouts().containsKey(name)) {
        throw problem(
            "--layout " + name,
            "is not in the book",
            "use one of " + String.join(", ", read.layouts().keySet()));
      }
    }
    read.layouts()
        .forEach(
            (name, versions) -> {
              Layout newest = versions.get(versions.size() - 1);
              boolean wanted =
                  layoutNames.isEmpty() ? newest.markers().isEmpty() : layoutNames.contains(name);
              if (wanted) {
                layouts.add(newest);
              }
            });
    if (layouts.isEmpty()) {
      throw problem("--book " + book, "has no layout without markers", "name one by --layout");
    }
    return layouts;
  }

  private DecodedPhoto decode() throws InputException, IOException {
    if (!Files.isRegularFile(photo)) {
      throw problem("PHOTO " + photo, "does not exist", "give a photo of the station");
    }
    DecodeResult decoded = DecodePhoto.decode(Files.readAllBytes(photo));
    if (decoded instanceof UnreadablePhoto bad) {
      throw problem("PHOTO " + photo, bad.reason(), bad.remedy());
    }
    return (DecodedPhoto) decoded;
  }

  private static InputException problem(String place, String found, String remedy) {
    return new InputException(List.of(new Problem(place, found, remedy)));
  }
}
