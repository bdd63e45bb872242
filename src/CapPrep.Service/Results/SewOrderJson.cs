using System.Text.Json;
using CapPrep.Engine;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Planning;

namespace CapPrep.Service.Results;

/// <summary>Writes what was worked out about the sew order. Elements, blocks and places in an order count from 1.</summary>
internal static class SewOrderJson
{
    /// <summary>Pairs listed of a kind; the number of all is given beside them.</summary>
    private const int MostPairs = 2000;

    public static void Write(Utf8JsonWriter writer, Preparation preparation)
    {
        writer.WriteStartObject("sewOrder");
        if (preparation.Order is { } order)
            WriteWorkedOut(writer, preparation, order);
        else
            WriteCounted(writer, preparation);
        writer.WriteEndObject();
    }

    /// <summary>The design lies on no cap, or could only be read coarsely.</summary>
    private static void WriteCounted(Utf8JsonWriter writer, Preparation preparation)
    {
        writer.WriteStartObject("received");
        writer.WriteNumber("colorChanges", preparation.ReceivedOrder.ColorChanges);
        writer.WriteNumber("trims", preparation.ReceivedOrder.Trims);
        writer.Mm("travelMm", preparation.ReceivedOrder.TravelMm);
        writer.WriteEndObject();
        writer.WriteString("used", Words<UsedOrder>.Standard.Of(UsedOrder.Received));
    }

    private static void WriteWorkedOut(Utf8JsonWriter writer, Preparation preparation, SewOrder order)
    {
        WriteFigures(writer, "received", order.Received);
        WriteFigures(writer, "proposed", order.Proposed);
        writer.WriteStartObject("floor");
        writer.Share("layersOnly", order.Floor.LayersOnly);
        writer.Share("colorsHeld", order.Floor.ColorsHeld);
        writer.WriteEndObject();
        writer.WriteString("used", Words<UsedOrder>.Standard.Of(order.Used));
        writer.WriteString("keptBecause", order.KeptBecause);
        writer.WriteNumber("settledRounds", preparation.SettledRounds);
        writer.WriteBoolean("settled", preparation.IsSettled);
        writer.WriteStartArray("elements");
        foreach (var element in preparation.Reading.Elements)
            WriteElement(writer, element, preparation);
        writer.WriteEndArray();
        WriteLinks(writer, preparation.Reading, order);
        writer.WriteStartObject("order");
        writer.Numbers("received", preparation.Reading.Elements.Select(element => element.Index + 1));
        writer.Numbers("proposed", order.Order.Select(element => element + 1));
        writer.WriteEndObject();
        WriteMoves(writer, order);
        WritePairs(writer, preparation.Reading, order);
        writer.Numbers("tagline", order.Tagline.Select(element => element + 1));
        WriteCertificate(writer, order.Certificate);
        writer.WriteStartArray("tradeOffs");
        foreach (var row in order.TradeOffs)
            WriteTradeOff(writer, row);
        writer.WriteEndArray();
    }

    private static void WriteFigures(Utf8JsonWriter writer, string name, OrderFigures figures)
    {
        writer.WriteStartObject(name);
        writer.WriteBoolean("decided", figures.Shares.Decided);
        writer.Share("orderIndex", figures.Shares.OrderIndex);
        writer.WriteStartArray("lineIndex");
        foreach (var line in figures.Shares.LineIndex)
            writer.WriteNumberValue(Figures.Rounded(line, 4));
        writer.WriteEndArray();
        writer.Share("taglineLate", figures.Shares.TaglineLate);
        writer.WriteNumber("colorChanges", figures.ColorChanges);
        writer.WriteNumber("trims", figures.Trims);
        writer.Mm("travelMm", figures.TravelMm);
        WriteDrift(writer, figures.DriftRatio);
        writer.WriteEndObject();
    }

    private static void WriteDrift(Utf8JsonWriter writer, double? ratio)
    {
        if (ratio is { } known)
            writer.WriteNumber("driftRatio", Figures.Rounded(known, 4));
    }

    private static void WriteElement(Utf8JsonWriter writer, Element element, Preparation preparation)
    {
        writer.WriteStartObject();
        writer.WriteNumber("element", element.Index + 1);
        writer.WriteNumber("block", element.Block);
        writer.WriteString("kind", Words<ElementKind>.Standard.Of(element.Kind));
        writer.Box("boxMm", Placement.Of(preparation.Seating!).OnCap(element.Box).ToMillimeters());
        writer.WriteNumber("stitches", element.Penetrations);
        writer.WriteStartObject("tapeStitches");
        writer.WriteNumber("first", element.First + 1);
        writer.WriteNumber("last", element.Last + 1);
        writer.WriteEndObject();
        writer.WriteEndObject();
    }

    private static void WriteLinks(Utf8JsonWriter writer, DesignReading reading, SewOrder order)
    {
        var kept = order.Plan.Steps.Count(step => step.Connection == Connection.KeptLink);
        writer.WriteStartObject("links");
        writer.WriteNumber("kept", kept);
        writer.WriteNumber("cut", reading.Links.Count - kept);
        writer.WriteNumber("new", order.Plan.Steps.Count(step => step.Connection == Connection.NewLink));
        writer.WriteEndObject();
    }

    private static void WriteMoves(Utf8JsonWriter writer, SewOrder order)
    {
        writer.WriteStartArray("moves");
        foreach (var move in order.Moves)
        {
            writer.WriteStartObject();
            writer.WriteNumber("element", move.Element + 1);
            writer.WriteNumber("from", move.From + 1);
            writer.WriteNumber("to", move.To + 1);
            writer.WriteString("because", move.Because);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void WritePairs(Utf8JsonWriter writer, DesignReading reading, SewOrder order)
    {
        writer.WriteNumber("mustFollowPairs", order.MustFollowPairs);
        writer.WriteStartArray("mustFollow");
        foreach (var pair in reading.MustFollow.Take(MostPairs))
        {
            writer.WriteStartObject();
            writer.WriteNumber("before", pair.Before + 1);
            writer.WriteNumber("after", pair.After + 1);
            writer.WriteString("reason", Words<MustFollowReason>.Standard.Of(pair.Reason));
            writer.WriteNumber("overlapMm2", Figures.Rounded(pair.OverlapMm2, 2));
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("relaxed");
        foreach (var pair in order.Relaxed.Take(MostPairs))
        {
            writer.WriteStartObject();
            writer.WriteNumber("one", pair.One + 1);
            writer.WriteNumber("other", pair.Other + 1);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void WriteCertificate(Utf8JsonWriter writer, Certificate certificate)
    {
        writer.WriteStartObject("certificate");
        writer.WriteString("claim", Words<CertificateClaim>.Standard.Of(certificate.Claim));
        writer.WriteNumber("index", Figures.Rounded(certificate.Index, 4));
        writer.WriteNumber("bound", Figures.Rounded(certificate.Bound, 4));
        writer.WriteNumber("gapPoints", Figures.Rounded(certificate.GapPoints, 2));
        writer.WriteNumber("costBound", Figures.Rounded(certificate.CostBound, 4));
        writer.WriteStartArray("under");
        foreach (var kept in certificate.Under)
            writer.WriteStringValue(kept);
        writer.WriteEndArray();
        writer.WriteString("says", certificate.Says);
        writer.WriteString("saysOfTrims", certificate.SaysOfTrims);
        writer.WriteEndObject();
    }

    private static void WriteTradeOff(Utf8JsonWriter writer, TradeOff row)
    {
        writer.WriteStartObject();
        writer.WriteNumber("extraColorChanges", row.ExtraColorChanges);
        writer.WriteNumber("extraTrims", row.ExtraTrims);
        writer.Share("orderIndex", row.OrderIndex);
        writer.Share("lineIndexMax", row.LineIndexMax);
        writer.Share("taglineLate", row.TaglineLate);
        WriteDrift(writer, row.DriftRatio);
        writer.WriteNumber("extraSecondsPerCap", Figures.Rounded(row.ExtraSecondsPerCap, 1));
        writer.WriteNumber("extraMinutes", Figures.Rounded(row.ExtraMinutes, 1));
        writer.WriteString("claim", Words<CertificateClaim>.Standard.Of(row.Claim));
        writer.WriteBoolean("chosen", row.Chosen);
        writer.WriteString("whyNot", row.WhyNot);
        writer.WriteEndObject();
    }
}
