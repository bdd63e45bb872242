namespace CapPrep.Engine.Checks;

/// <summary>The order in which people look at places: up the cap from the brim, on one height from left to right.</summary>
internal static class ReadingOrder
{
    /// <summary>Places that are not on the cap keep their order.</summary>
    internal static IEnumerable<Place> InReadingOrder(this IEnumerable<Place> places) =>
        places.OrderBy(place => place.BoxMm?.Bottom ?? 0).ThenBy(place => place.BoxMm?.Left ?? 0);
}
