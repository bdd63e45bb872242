using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Tests.Checks.OnStitches.Layers;

/// <summary>Layers on layers, each of another color.</summary>
internal static class LayerDrafts
{
    /// <summary>So many fills of 20 x 15 mm on one spot, all on the underlay of the first.</summary>
    internal static Draft Fills(Draft draft, int layers, int rowPitch = 4)
    {
        for (var layer = 0; layer < layers; layer++)
            draft.Layer(new(0, 0, 200, 150), layer, rowPitch);
        return draft;
    }

    /// <summary>One layer over what is there; its rows lie a little beside those of the one below.</summary>
    internal static Draft Layer(this Draft draft, Box box, int layer, int rowPitch = 4)
    {
        if (layer > 0)
            draft.ColorStop();
        var shifted = box.Shift(layer, layer);
        return draft.Trim(new(shifted.Left, shifted.Bottom))
            .Stitch(new(shifted.Left, shifted.Bottom))
            .Sew(Fill.Of(shifted) with { UnderlayPitch = layer == 0 ? 24 : 0, RowPitch = rowPitch, StitchLength = 41 });
    }
}
