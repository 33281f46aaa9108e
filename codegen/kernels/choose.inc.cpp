template <typename Number> static inline Number smaller(Number a, Number b) { return a < b ? a : b; }
template <typename Number> static inline Number larger(Number a, Number b) { return a > b ? a : b; }
