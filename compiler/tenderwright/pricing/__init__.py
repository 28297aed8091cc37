"""Price: line quantities, the owner's estimate, and shared services apportioned; money is Decimal, rounded once."""
