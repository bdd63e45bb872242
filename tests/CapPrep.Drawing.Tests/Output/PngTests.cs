using System.Buffers.Binary;
using CapPrep.Drawing.Cards;
using CapPrep.Drawing.Output;
using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Tests.Builders;
using Shouldly;
using SkiaSharp;
using Xunit;
using ZXing;
using ZXing.Common;

namespace CapPrep.Drawing.Tests.Output;

public class PngTests
{
    [Theory]
    [InlineData(110)]
    [InlineData(150)]
    [InlineData(300)]
    public void The_code_on_a_card_is_read_back(int dpi) =>
        ReadCode(SheetToPng.Draw(CardSheet.Lay(Some.Job(), Some.Sewn()), dpi)).ShouldBe("CAPPREP 10427 1A2B3C4D");

    [Fact]
    public void A_prefix_stands_in_front_of_the_code() =>
        ReadCode(SheetToPng.Draw(CardSheet.Lay(Some.Job() with { QrPrefix = "https://shop.example/caps/€?" }, Some.Sewn())))
            .ShouldBe("https://shop.example/caps/€?CAPPREP 10427 1A2B3C4D");

    [Fact]
    public void A_code_has_no_gray_between_its_modules()
    {
        using var picture = SKBitmap.Decode(SheetToPng.Draw(SomeSheet.With(CodeMatrix.Qr("CAPPREP 1 AB", new SheetBox(1000, 1000, 5000, 5000), Ink.Black))));
        picture.Pixels.Select(pixel => pixel.Red).Distinct().Order().ShouldBe([(byte)0, (byte)255]);
    }

    [Fact]
    public void The_size_of_a_pixel_is_in_the_file()
    {
        var png = SheetToPng.Draw(SomeSheet.With(), 150);
        var chunk = png.AsSpan().IndexOf("pHYs"u8);
        BinaryPrimitives.ReadUInt32BigEndian(png.AsSpan(chunk + 4)).ShouldBe(5906u);
        using var picture = SKBitmap.Decode(png);
        picture.Width.ShouldBe(1241);
        picture.Height.ShouldBe(1754);
    }

    [Fact]
    public void A_character_that_the_font_lacks_leaves_a_mark()
    {
        using var picture = SKBitmap.Decode(SheetToPng.Draw(SomeSheet.With(SomeSheet.Text("\u6F22"))));
        picture.Pixels.Count(pixel => pixel.Red < 128).ShouldBeGreaterThan(50);
    }

    [Fact]
    public void Equal_sheets_give_equal_files() =>
        SheetToPng.Draw(CardSheet.Lay(Some.Job(), Some.Held()), 60).ShouldBe(SheetToPng.Draw(CardSheet.Lay(Some.Job(), Some.Held()), 60));

    [Theory]
    [InlineData(29)]
    [InlineData(601)]
    public void A_resolution_out_of_bounds_is_refused(int dpi) =>
        Should.Throw<ArgumentOutOfRangeException>(() => SheetToPng.Draw(SomeSheet.With(), dpi));

    private static string? ReadCode(byte[] png)
    {
        using var picture = SKBitmap.Decode(png);
        var gray = picture.Pixels.Select(pixel => pixel.Red).ToArray();
        var reader = new BarcodeReaderGeneric
        {
            Options = new DecodingOptions { TryHarder = true, PossibleFormats = [BarcodeFormat.QR_CODE] },
        };
        return reader.Decode(new RGBLuminanceSource(gray, picture.Width, picture.Height, RGBLuminanceSource.BitmapFormat.Gray8))?.Text;
    }
}
