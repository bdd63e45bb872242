using System.ComponentModel;
using System.Diagnostics;
using Xunit;

namespace CapPrep.Drawing.Tests.Builders;

/// <summary>Runs the poppler tools (Debian package poppler-utils) as an outside reader of our PDF files.</summary>
internal static class Poppler
{
    /// <summary>CI installs the tools, so there a missing one is a fault; a newcomer's machine may lack them.</summary>
    private static bool IsCi => Environment.GetEnvironmentVariable("CI") == "true";

    public static string Text(byte[] pdf) => Run("pdftotext", pdf, "-layout", "IN", "-");

    /// <summary>Gray levels of the page, row by row from the top.</summary>
    public static GrayPicture Gray(byte[] pdf, int dpi, int x, int y, int width, int height)
    {
        var folder = Directory.CreateTempSubdirectory("capprep-pdf-");
        try
        {
            var output = Path.Combine(folder.FullName, "page");
            Run("pdftoppm", pdf, "-gray", "-singlefile", "-r", $"{dpi}", "-x", $"{x}", "-y", $"{y}", "-W", $"{width}", "-H", $"{height}", "IN", output);
            return GrayPicture.Read(File.ReadAllBytes(output + ".pgm"));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string Run(string tool, byte[] pdf, params string[] arguments)
    {
        var input = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(input, pdf);
            var start = new ProcessStartInfo(tool, arguments.Select(argument => argument == "IN" ? input : argument))
            {
                RedirectStandardOutput = true,
            };
            using var process = Start(start);
            var text = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0
                ? text
                : throw new InvalidOperationException($"{tool} ended with code {process.ExitCode}.");
        }
        finally
        {
            File.Delete(input);
        }
    }

    private static Process Start(ProcessStartInfo start)
    {
        try
        {
            return Process.Start(start)!;
        }
        catch (Win32Exception)
        {
            var says = $"{start.FileName} is not installed; this test needs poppler (Debian: apt-get install poppler-utils).";
            Assert.SkipUnless(IsCi, says);
            throw new InvalidOperationException(says);
        }
    }
}

/// <summary>A picture in gray levels, read from a binary PGM file (Netpbm, "PGM format specification").</summary>
internal sealed record GrayPicture(int Width, int Height, byte[] Levels)
{
    public byte At(int x, int y) => Levels[(y * Width) + x];

    public static GrayPicture Read(byte[] pgm)
    {
        var at = 0;
        var words = new string[4];
        for (var i = 0; i < words.Length; i++)
        {
            var start = at;
            while (!char.IsWhiteSpace((char)pgm[at]))
                at++;
            words[i] = System.Text.Encoding.ASCII.GetString(pgm, start, at - start);
            at++;
        }

        return new GrayPicture(int.Parse(words[1]), int.Parse(words[2]), pgm[at..]);
    }
}
