using House.Tests.Crooked.Inner.Two;

namespace House.Tests.Crooked.Inner.One;

/// <summary>Begins a circle of three.</summary>
internal sealed class First : Second;
