#if !defined(__AVR_ATmega328P__) && !defined(__AVR_ATmega328__)
#error "This sketch is made for an ATmega328P. Choose that chip, or generate the sketch again for yours."
#endif
#if F_CPU != 16000000UL
#error "The pixels are timed by counting the cycles of a 16 MHz clock. Set the clock to 16 MHz."
#endif
static_assert(PIXEL_PIN <= 19, "PIXEL_PIN must be a pin from 0 to 19: other pins cannot send pixel data.");

// Pins 0 to 7 are bits of port D, 8 to 13 of port B, 14 to 19 (A0 to A5) of port C.
const uint8_t PIXEL_BIT = 1 << (PIXEL_PIN < 8 ? PIXEL_PIN : PIXEL_PIN < 14 ? PIXEL_PIN - 8 : PIXEL_PIN - 14);
// Where OUT finds PORTD, PORTB and PORTC: ATmega328P datasheet, register summary.
const uint8_t PIXEL_PORT = PIXEL_PIN < 8 ? 0x0B : PIXEL_PIN < 14 ? 0x05 : 0x08;

// Each bit is a pulse: short for 0, long for 1, one every 20 cycles (1.25 us), highest bit first.
//
//   cycle  0    5         14    20
//     0    |####|_______________|       high for  5 cycles, 312.5 ns; low for 15, 937.5 ns
//     1    |#############|______|       high for 14 cycles, 875 ns;   low for  6, 375 ns
//
// No interrupt may stretch a pulse, so they wait until the last byte is out. Every bit takes the same 20
// cycles, the last one of a byte too. Behind each instruction stand the cycles of its bit that it takes.
static void send_pixels(uint8_t, const uint8_t *bytes, uint16_t byteCount) {
  if (byteCount == 0) return;
  const uint8_t status = SREG;
  cli();
  const uint8_t low = (uint8_t)(_SFR_IO8(PIXEL_PORT) & ~PIXEL_BIT);  // the port's other pins stay as they are
  const uint8_t high = low | PIXEL_BIT;
  uint8_t data = *bytes++;
  uint8_t bits = 8;
  uint8_t level;
  asm volatile(
      "rjmp next_bit_%=        \n\t"
      "last_bit_%=:            \n\t"  //          of a byte: fetch the next one in passing
      "ldi  %[bits], 8         \n\t"  //  9
      "rjmp .+0                \n\t"  // 10 - 11  wait
      "rjmp .+0                \n\t"  // 12 - 13  wait
      "out  %[port], %[low]    \n\t"  // 14       a 1 ends here
      "sbiw %[left], 1         \n\t"  // 15 - 16
      "breq all_sent_%=        \n\t"  // 17       1 cycle if not taken
      "ld   %[data], %a[next]+ \n\t"  // 18 - 19
      "next_bit_%=:            \n\t"
      "out  %[port], %[high]   \n\t"  //  0       every pulse begins here
      "mov  %[level], %[low]   \n\t"  //  1
      "sbrc %[data], 7         \n\t"  //  2       if the bit is 0, skip the next: 2 cycles either way
      "mov  %[level], %[high]  \n\t"  //  3
      "lsl  %[data]            \n\t"  //  4
      "out  %[port], %[level]  \n\t"  //  5       a 0 ends here
      "dec  %[bits]            \n\t"  //  6
      "breq last_bit_%=        \n\t"  //  7       1 cycle if not taken, 2 if taken
      "rjmp .+0                \n\t"  //  8 -  9  wait
      "rjmp .+0                \n\t"  // 10 - 11  wait
      "rjmp .+0                \n\t"  // 12 - 13  wait
      "out  %[port], %[low]    \n\t"  // 14       a 1 ends here
      "rjmp .+0                \n\t"  // 15 - 16  wait
      "nop                     \n\t"  // 17       wait
      "rjmp next_bit_%=        \n\t"  // 18 - 19
      "all_sent_%=:            \n\t"
      : [data] "+r"(data), [bits] "+d"(bits), [level] "=&r"(level), [left] "+w"(byteCount), [next] "+e"(bytes)
      : [port] "I"(PIXEL_PORT), [high] "r"(high), [low] "r"(low)
      : "memory");
  SREG = status;
}
