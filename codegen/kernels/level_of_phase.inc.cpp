// 0 to just below 1 in 16 fraction bits as a level.
static inline uint8_t level_of_phase(uint16_t x) { return (uint8_t)(x >> 8); }
