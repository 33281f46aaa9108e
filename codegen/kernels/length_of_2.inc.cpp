static int32_t length_of_2(int32_t x, int32_t y) { return length_of_3(x, y, 0); }
