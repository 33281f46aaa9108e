static uint16_t scatter_2(uint16_t a, uint16_t b) { return scatter((uint16_t)(a + scatter(b))); }
