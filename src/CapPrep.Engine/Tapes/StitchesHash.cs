using System.Buffers.Binary;
using System.Security.Cryptography;

namespace CapPrep.Engine.Tapes;

/// <summary>
/// Names what a machine would sew, whatever the header says: two files with the same records and the same moves have
/// the same hash.
/// </summary>
public static class StitchesHash
{
    private const int BytesPerRecord = 9;

    /// <summary>
    /// SHA-256, lower-case hex, over one byte for the kind and two little-endian 32-bit whole numbers for the position
    /// behind each record, in tape units.
    /// </summary>
    public static string Of(Tape tape)
    {
        var bytes = new byte[tape.RecordCount * BytesPerRecord];
        for (var record = 0; record < tape.RecordCount; record++)
        {
            var place = bytes.AsSpan(record * BytesPerRecord, BytesPerRecord);
            place[0] = (byte)tape.Kinds[record];
            BinaryPrimitives.WriteInt32LittleEndian(place[1..], tape.X[record]);
            BinaryPrimitives.WriteInt32LittleEndian(place[5..], tape.Y[record]);
        }

        return Convert.ToHexStringLower(SHA256.HashData(bytes));
    }
}
