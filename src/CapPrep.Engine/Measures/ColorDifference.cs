namespace CapPrep.Engine.Measures;

/// <summary>
/// How different two colors look: the color difference CIEDE2000 (ISO/CIE 11664-6), all weights 1. About 1 is the least
/// a trained eye sees side by side.
/// </summary>
public static class ColorDifference
{
    /// <summary>Of two screen values <c>#RRGGBB</c>.</summary>
    public static double Between(string one, string other) => Between(LabColor.Of(one), LabColor.Of(other));

    public static double Between(LabColor one, LabColor other)
    {
        var stretch = Stretch((Chroma(one) + Chroma(other)) / 2);
        var (first, second) = (Polar.Of(one, stretch), Polar.Of(other, stretch));
        var hue = HueStep(first, second);
        var lightness = other.L - one.L;
        var chroma = second.Chroma - first.Chroma;
        var across = 2 * Math.Sqrt(first.Chroma * second.Chroma) * Trig.Sine(hue / 2);
        var mean = new Mean((one.L + other.L) / 2, (first.Chroma + second.Chroma) / 2, MeanHue(first, second));
        var (l, c, h) = (lightness / mean.LightnessWeight, chroma / mean.ChromaWeight, across / mean.HueWeight);
        return Math.Sqrt((l * l) + (c * c) + (h * h) + (mean.Turn * c * h));
    }

    private static double Chroma(LabColor color) => Math.Sqrt((color.A * color.A) + (color.B * color.B));

    /// <summary>Grays are pulled apart along a*, strong colors are not.</summary>
    private static double Stretch(double chroma) => 1 + (0.5 * (1 - Math.Sqrt(Seventh(chroma))));

    /// <summary>c^7 / (c^7 + 25^7).</summary>
    private static double Seventh(double chroma)
    {
        var share = chroma / 25;
        var power = share * share * share * share * share * share * share;
        return power / (power + 1);
    }

    /// <summary>From the first hue to the second, -180 to 180 degrees; 0 where one has no hue.</summary>
    private static double HueStep(Polar first, Polar second)
    {
        if (first.Chroma * second.Chroma == 0)
            return 0;
        var step = second.Hue - first.Hue;
        return step > 180 ? step - 360 : step < -180 ? step + 360 : step;
    }

    private static double MeanHue(Polar first, Polar second)
    {
        var sum = first.Hue + second.Hue;
        if (first.Chroma * second.Chroma == 0)
            return sum;
        if (Math.Abs(first.Hue - second.Hue) <= 180)
            return sum / 2;
        return (sum < 360 ? sum + 360 : sum - 360) / 2;
    }

    private readonly record struct Polar(double Chroma, double Hue)
    {
        public static Polar Of(LabColor color, double stretch)
        {
            var a = color.A * stretch;
            return new(Math.Sqrt((a * a) + (color.B * color.B)), Trig.Degrees(a, color.B));
        }
    }

    private readonly record struct Mean(double Lightness, double Chroma, double Hue)
    {
        public double LightnessWeight
        {
            get
            {
                var square = (Lightness - 50) * (Lightness - 50);
                return 1 + (0.015 * square / Math.Sqrt(20 + square));
            }
        }

        public double ChromaWeight => 1 + (0.045 * Chroma);

        public double HueWeight => 1 + (0.015 * Chroma * HueShare);

        public double Turn
        {
            get
            {
                var away = (Hue - 275) / 25;
                return -2 * Math.Sqrt(Seventh(Chroma)) * Trig.Sine(60 * Trig.Exponential(-away * away));
            }
        }

        private double HueShare => 1
            - (0.17 * Trig.Cosine(Hue - 30))
            + (0.24 * Trig.Cosine(2 * Hue))
            + (0.32 * Trig.Cosine((3 * Hue) + 6))
            - (0.20 * Trig.Cosine((4 * Hue) - 63));
    }
}
