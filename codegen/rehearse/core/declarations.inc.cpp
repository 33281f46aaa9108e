// The sketch core of a rehearsal: what a board's own build brings to every sketch, for an ATmega328P at 16 MHz.
// Written from the ATmega328P datasheet; the names are those that sketches have come to expect.
#pragma once

#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/pgmspace.h>
#include <math.h>
#include <stdint.h>
#include <stdlib.h>

#define LOW 0x0
#define HIGH 0x1

#define INPUT 0x0
#define OUTPUT 0x1
#define INPUT_PULLUP 0x2

void setup();
void loop();

uint32_t millis();
uint32_t micros();

void pinMode(uint8_t pin, uint8_t mode);
void digitalWrite(uint8_t pin, uint8_t level);
int digitalRead(uint8_t pin);

// Usual core macros, names that a sketch had better not use for its own things. Without them a clash would
// only show at the maker's desk. From memory, common practice on such boards.
#define PI 3.1415926535897932384626433832795
#define HALF_PI 1.5707963267948966192313216916398
#define TWO_PI 6.283185307179586476925286766559
#define DEG_TO_RAD 0.017453292519943295769236907684886
#define RAD_TO_DEG 57.295779513082320876798154814105
#define EULER 2.718281828459045235360287471352

#define LSBFIRST 0
#define MSBFIRST 1
#define CHANGE 1
#define FALLING 2
#define RISING 3
#define SERIAL 0x0
#define DISPLAY 0x1
#define DEFAULT 1
#define EXTERNAL 0
#define INTERNAL 3

#ifdef abs
#undef abs
#endif
#define abs(x) ((x) > 0 ? (x) : -(x))
#define min(a, b) ((a) < (b) ? (a) : (b))
#define max(a, b) ((a) > (b) ? (a) : (b))
#define constrain(x, low, high) ((x) < (low) ? (low) : ((x) > (high) ? (high) : (x)))
#define round(x) ((x) >= 0 ? (long)((x) + 0.5) : (long)((x)-0.5))
#define radians(degrees) ((degrees)*DEG_TO_RAD)
#define degrees(radians) ((radians)*RAD_TO_DEG)
#define sq(x) ((x) * (x))

#define interrupts() sei()
#define noInterrupts() cli()
#define clockCyclesPerMicrosecond() (F_CPU / 1000000L)

#define lowByte(word) ((uint8_t)((word)&0xff))
#define highByte(word) ((uint8_t)((word) >> 8))
#define bit(number) (1UL << (number))
#define bitRead(value, number) (((value) >> (number)) & 0x01)
#define bitSet(value, number) ((value) |= (1UL << (number)))
#define bitClear(value, number) ((value) &= ~(1UL << (number)))
#define bitToggle(value, number) ((value) ^= (1UL << (number)))
#define bitWrite(value, number, to) ((to) ? bitSet(value, number) : bitClear(value, number))

typedef bool boolean;
typedef uint8_t byte;
typedef unsigned int word;

static const uint8_t A0 __attribute__((unused)) = 14;
static const uint8_t A1 __attribute__((unused)) = 15;
static const uint8_t A2 __attribute__((unused)) = 16;
static const uint8_t A3 __attribute__((unused)) = 17;
static const uint8_t A4 __attribute__((unused)) = 18;
static const uint8_t A5 __attribute__((unused)) = 19;
static const uint8_t LED_BUILTIN __attribute__((unused)) = 13;
