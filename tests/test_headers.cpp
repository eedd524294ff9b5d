// Holds the precompiled headers that all tests share; there is nothing in it.
