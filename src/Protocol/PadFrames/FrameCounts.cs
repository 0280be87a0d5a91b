using System.Runtime.CompilerServices;

namespace ScaleLink.Protocol.PadFrames;

/// <summary>Room for the most cells a pad can have, inside the sample itself.</summary>
[InlineArray(PadBody.MaxCells)]
struct FrameCounts
{
    int _first;
}
