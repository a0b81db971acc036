/**
 * Open Location Code against the test data that its specification is published with (test_data/encoding.csv, decoding.csv,
 * shortCodeTests.csv and validityTests.csv, Apache-2.0, source seen), and against fractions reckoned exactly.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseCoordinates } from '#core/geo/coordinate-text.ts'
import {
  codeKind,
  fromOpenLocationCode,
  recoverCode,
  shortenCode,
  toOpenLocationCode,
} from '#core/geo/open-location-code.ts'

/** encoding.csv: latitude, longitude, length, code. */
const ENCODED = `
20.375,2.775,6,7FG49Q00+ 20.3700625,2.7821875,10,7FG49QCJ+2V 20.3701125,2.782234375,11,7FG49QCJ+2VX
20.3701135,2.78223535156,13,7FG49QCJ+2VXGJ 47.0000625,8.0000625,10,8FVC2222+22 -41.2730625,174.7859375,10,4VCPPQGP+Q9
0.5,-179.5,4,62G20000+ -89.5,-179.5,4,22220000+ 20.5,2.5,4,7FG40000+ -89.9999375,-179.9999375,10,22222222+22
0.5,179.5,4,6VGX0000+ 1,1,11,6FH32222+222 90,1,4,CFX30000+ 92,1,4,CFX30000+ 90,1,10,CFX3X2X2+X2 1,180,4,62H20000+
1,181,4,62H30000+ 20.3701135,362.78223535156,13,7FG49QCJ+2VXGJ 47.0000625,728.0000625,10,8FVC2222+22
-41.2730625,1254.7859375,10,4VCPPQGP+Q9 20.3701135,-357.217764648,13,7FG49QCJ+2VXGJ 47.0000625,-711.9999375,10,8FVC2222+22
-41.2730625,-905.2140625,10,4VCPPQGP+Q9 1.2,3.4,10,6FH56C22+22 37.539669125,-122.375069724,15,849VGJQF+VX7QR3J
37.539669125,-122.375069724,16,849VGJQF+VX7QR3J 37.539669125,-122.375069724,100,849VGJQF+VX7QR3J 35.6,3.033,10,8F75J22M+26
-48.71,142.78,8,4R347QRJ+ -70,163.7,8,3V252P22+ -2.804,7.003,13,6F9952W3+C6222 13.9,164.88,12,7V56WV2J+2222
-13.23,172.77,8,5VRJQQCC+ 40.6,129.7,8,8QGFJP22+ -52.166,13.694,14,3FVMRMMV+JJ2222 -14,106.9,6,5PR82W00+
70.3,-87.64,13,C62J8926+22222 66.89,-106,10,95RPV2R2+22 2.5,-64.23,11,67JQGQ2C+222 -56.7,-47.2,14,38MJ8R22+222222
-34.45,-93.719,6,46Q8H700+ -35.849,-93.75,12,46P85722+C222 65.748,24.316,12,9GQ6P8X8+6C22 -57.32,130.43,12,3QJGMCJJ+2222
17.6,-44.4,6,789QJJ00+ -27.6,-104.8,6,554QC600+ 41.87,-145.59,13,83HPVCC6+22222 -4.542,148.638,13,6R7CFJ5Q+66222
-37.014,-159.936,10,43J2X3P7+CJ -57.25,125.49,15,3QJ7QF2R+2222222 48.89,-80.52,13,86WXVFRJ+22222
53.66,170.97,14,9V5GMX6C+222222 0.49,-76.97,15,67G5F2RJ+2222222 40.44,-36.7,12,89G5C8R2+2222 58.73,69.95,8,9JCFPXJ2+
16.179,150.075,12,7R8G53HG+J222 -55.574,-70.061,12,37PFCWGQ+CJ22 76.1,-82.5,15,C68V4G22+2222222 58.66,149.17,10,9RCFM56C+22
-67.2,48.6,6,3H4CRJ00+ -5.6,-54.5,14,6867CG22+222222 -34,145.5,14,4RR72G22+222222 -34.2,66.4,12,4JQ8RC22+2222
17.8,-108.5,6,759HRG00+ 10.734,-168.294,10,722HPPM4+JC -28.732,54.32,8,5H3P789C+ 64.1,107.9,12,9PP94W22+2222
79.7525,6.9623,8,CFF8QX36+ -63.6449,-25.1475,8,398P9V43+ 35.019,148.827,11,8R7C2R9G+JR2 71.132,-98.584,15,C6334CJ8+RC22222
53.38,-51.34,12,985C9MJ6+2222 -1.2,170.2,12,6VCGR622+2222 50.2,-162.8,11,922V6622+222 -25.798,-59.812,10,5862652Q+R6
81.654,-162.422,14,C2HVMH3H+J62222 -75.7,-35.4,8,29P68J22+ 67.2,115.1,11,9PVQ6422+222 -78.137,-42.995,12,28HVV274+6222
-56.3,114.5,11,3PMPPG22+222 10.767,-62.787,13,772VQ687+R6222 -19.212,107.423,10,5PG9QCQF+66
21.192,-45.145,15,78HP5VR4+R222222 16.701,148.648,14,7R8CPJ2X+C62222 52.25,-77.45,15,97447H22+2222222
-68.54504,-62.81725,11,373VF53M+X4J 76.7,-86.172,12,C68MPR2H+2622 -6.2,96.6,13,6M5RRJ22+22222 59.32,-157.21,12,93F48QCR+2222
29.7,39.6,12,7GXXPJ22+2222 -18.32,96.397,10,5MHRM9JW+2R -30.3,76.5,11,4JXRPG22+222 50.342,-112.534,15,95298FR8+RC22222
80.0100000001,58.57,15,CHGW2H6C+2222222 80.0099999999,58.57,15,CHGW2H5C+X2RRRRR -80.0099999999,58.57,15,2HFWXHRC+2222222
-80.0100000001,58.57,15,2HFWXHQC+X2RRRRR 47.000000080000000,8.00022229,15,8FVC2222+235235C
68.3500147997595,113.625636875353,15,9PWM9J2G+272FWJV 38.1176000887231,165.441989844555,15,8VC74C9R+2QX445C
-28.1217794010122,-154.066811473758,15,5337VWHM+77PR2GR -80.000000,-170.000000,2,22000000+
-80.000000,-360000000170.000000,2,22000000+`

/** decoding.csv: code, its length, south, west, north, east. */
const DECODED = `
7FG49Q00+,6,20.35,2.75,20.4,2.8 7FG49QCJ+2V,10,20.37,2.782125,20.370125,2.78225
7FG49QCJ+2VX,11,20.3701,2.78221875,20.370125,2.78225 7FG49QCJ+2VXGJ,13,20.370113,2.782234375,20.370114,2.78223632813
8FVC2222+22,10,47.0,8.0,47.000125,8.000125 4VCPPQGP+Q9,10,-41.273125,174.785875,-41.273,174.786 62G20000+,4,0.0,-180.0,1,-179
22220000+,4,-90,-180,-89,-179 7FG40000+,4,20.0,2.0,21.0,3.0 22222222+22,10,-90.0,-180.0,-89.999875,-179.999875
6VGX0000+,4,0,179,1,180 6FH32222+222,11,1,1,1.000025,1.00003125 CFX30000+,4,89,1,90,2 62H20000+,4,1,-180,2,-179
62H30000+,4,1,-179,2,-178 CFX3X2X2+X2,10,89.9998750,1,90,1.0001250
6FH56C22+22,10,1.2000000000000028,3.4000000000000057,1.2001249999999999,3.4001250000000027
849VGJQF+VX7QR3J,15,37.5396691200,-122.3750698242,37.5396691600,-122.3750697021
849VGJQF+VX7QR3J7QR3J,15,37.5396691200,-122.3750698242,37.5396691600,-122.3750697021`

/** shortCodeTests.csv: full code, reference latitude and longitude, short code; B both ways, R recovered only. */
const SHORTENED = `
9C3W9QCJ+2VX,51.3701125,-1.217765625,+2VX,B 9C3W9QCJ+2VX,51.3708675,-1.217765625,CJ+2VX,B
9C3W9QCJ+2VX,51.3693575,-1.217765625,CJ+2VX,B 9C3W9QCJ+2VX,51.3701125,-1.218520625,CJ+2VX,B
9C3W9QCJ+2VX,51.3701125,-1.217010625,CJ+2VX,B 9C3W9QCJ+2VX,51.3852125,-1.217765625,9QCJ+2VX,B
9C3W9QCJ+2VX,51.3550125,-1.217765625,9QCJ+2VX,B 9C3W9QCJ+2VX,51.3701125,-1.232865625,9QCJ+2VX,B
9C3W9QCJ+2VX,51.3701125,-1.202665625,9QCJ+2VX,B 8FJFW222+,42.899,9.012,22+,B 796RXG22+,14.95125,-23.5001,22+,B
8FVC2GGG+GG,46.976,8.526,2GGG+GG,B 8FRCXGGG+GG,47.026,8.526,XGGG+GG,B 8FR9GXGG+GG,46.526,8.026,GXGG+GG,B
8FRCG2GG+GG,46.526,7.976,G2GG+GG,B CFX22222+22,89.6,0.0,2222+22,R
8FRCG2GG+GG,46.526,7.976,8FRCG2GG+GG,R`

/** validityTests.csv: code, valid, short, full. */
const JUDGED = `
8FWC2345+G6,true,false,true 8FWC2345+G6G,true,false,true 8fwc2345+,true,false,true 8FWCX400+,true,false,true
WC2345+G6g,true,true,false 2345+G6,true,true,false 45+G6,true,true,false +G6,true,true,false G+,false,false,false
+,false,false,false 8FWC2345+G,false,false,false 8FWC2_45+G6,false,false,false 8FWC2η45+G6,false,false,false
8FWC2345+G6+,false,false,false 8FWC2300+G6,false,false,false WC2300+G6g,false,false,false WC2345+G,false,false,false`

function rows(text: string): string[][] {
  return text
    .trim()
    .split(/\s+/u)
    .map((row) => row.split(','))
}

describe('the published examples', () => {
  it.each(rows(ENCODED))('%s, %s in %s digits is %s', (lat, lon, length, code) => {
    expect(toOpenLocationCode({ lat: Number(lat), lon: Number(lon) }, Number(length))).toBe(code)
  })

  it.each(rows(DECODED))('%s is read back as its square', (code = '', _length, south, west, north, east) => {
    const { at } = fromOpenLocationCode(code)
    expect(at.lat).toBeCloseTo((Number(south) + Number(north)) / 2, 9)
    expect(at.lon).toBeCloseTo((Number(west) + Number(east)) / 2, 9)
  })

  it.each(rows(SHORTENED))('%s near %s, %s is %s', (full = '', lat, lon, short = '', kind) => {
    const reference = { lat: Number(lat), lon: Number(lon) }
    expect(recoverCode(short, reference)).toBe(full)
    if (kind === 'B') expect(shortenCode(full, reference)).toBe(short)
  })

  it('made whole near the south pole keeps its last row and column', () => {
    // shortCodeTests.csv: six, then two, of the last digit, near 81 south on the zero meridian.
    const short = `${'X'.repeat(6)}+${'X'.repeat(2)}`
    expect(recoverCode(short, { lat: -81, lon: 0 })).toBe(`2C${short}`)
  })

  it.each(rows(JUDGED))('%s is judged', (code = '', valid, short, full) => {
    const kind = codeKind(code)
    expect([kind !== 'none', kind === 'short', kind === 'full'].map(String)).toEqual([valid, short, full])
  })
})

describe('a code', () => {
  it('tells how large its square is', () => {
    // 1/8000 of a degree, at the most 111,321 m (specification, table of code lengths).
    expect(fromOpenLocationCode('8FVC2222+22').side).toBeCloseTo(13.9, 1)
  })

  it('typed short is read near a place', () => {
    const read = parseCoordinates('2GGG+GG', { lat: 46.976, lon: 8.526 })
    expect(read.ok && toOpenLocationCode(read.value.at, 10)).toBe('8FVC2GGG+GG')
  })
})

describe('a code that is none', () => {
  // A short code has no padding (specification, "Short Codes"): there is nothing to tell how large its square is.
  it.each([
    'WC2300+',
    'WC00+',
    '00+',
    '00000000+',
    '8F00FW00+',
    '8FWC2030+',
    '8FWC200+',
    '8FWC23000+',
    'XX000000+',
    '+G',
  ])('%s is refused', (code) => expect(codeKind(code)).toBe('none'))

  it('is refused where it is typed, near a place too', () => {
    const read = parseCoordinates('WC2300+', { lat: 47, lon: 8 })
    expect(read.ok ? null : read.fault.message).toContain('"WC2300+" is not a valid Open Location Code')
  })

  it('is a bug to read, shorten or make whole', () => {
    expect(() => fromOpenLocationCode('2222+22')).toThrow(RangeError)
    expect(() => shortenCode('WC2300+', { lat: 0, lon: 0 })).toThrow(RangeError)
    expect(() => recoverCode('WC2300+', { lat: 0, lon: 0 })).toThrow(RangeError)
  })
})

/** Steps from the south pole or from 180 west, from the decimals as they are written, without any rounding. */
function exactSteps(text: string, half: bigint, perDegree: bigint): bigint {
  const [whole = '', decimals = ''] = text.replace('-', '').split('.')
  const scale = 10n ** BigInt(decimals.length)
  const size = BigInt(whole + decimals) * (text.startsWith('-') ? -1n : 1n)
  const scaled = (size + half * scale) * perDegree
  return scaled / scale
}

/** A code written from its first digit on, as the specification's forward encoding goes, in whole numbers without bound. */
function exactCode(lat: string, lon: string, length: number): string {
  const digits = '23456789CFGHJMPQRVWX'
  let north = exactSteps(lat, 90n, 25_000_000n)
  let east = exactSteps(lon, 180n, 8_192_000n)
  let [high, wide] = [400n * 25_000_000n, 400n * 8_192_000n]
  let code = ''
  for (let pair = 0; pair < 5; pair++) {
    high /= 20n
    wide /= 20n
    code += digits.charAt(Number(north / high)) + digits.charAt(Number(east / wide))
    north %= high
    east %= wide
    if (pair === 3) code += '+'
  }
  for (let digit = 0; digit < 5; digit++) {
    high /= 5n
    wide /= 4n
    code += digits.charAt(Number((north / high) * 4n + east / wide))
    north %= high
    east %= wide
  }
  return code.slice(0, length + 1)
}

describe('any place', () => {
  const decimals = fc.integer({ min: 0, max: 8 })

  it('has the code that its decimals give exactly, on the edges of squares too', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -89.4, max: 89.4, noNaN: true }),
        fc.double({ min: -179.4, max: 179.4, noNaN: true }),
        decimals,
        fc.constantFrom(8, 10, 11, 12, 13, 14, 15),
        (roughLat, roughLon, places, length) => {
          const [lat, lon] = [roughLat.toFixed(places), roughLon.toFixed(places)]
          expect(toOpenLocationCode({ lat: Number(lat), lon: Number(lon) }, length)).toBe(exactCode(lat, lon, length))
        },
      ),
      { numRuns: 20_000 },
    )
  })

  it('on a corner of squares lies in the one to the north and east, which holds its south-west corner', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -719_999, max: 719_999 }),
        fc.integer({ min: -1_439_999, max: 1_439_999 }),
        (row, column) => {
          // 1/8000 of a degree: the square of ten digits.
          const at = { lat: row / 8000, lon: column / 8000 }
          const middle = fromOpenLocationCode(toOpenLocationCode(at, 10)).at
          expect(middle.lat - at.lat).toBeCloseTo(1 / 16_000, 10)
          expect(middle.lon - at.lon).toBeCloseTo(1 / 16_000, 10)
        },
      ),
      { numRuns: 5000 },
    )
  })

  it('is found again from its short code, from everywhere within reach, at the poles and at 180 degrees too', () => {
    const near = (value: number, by: number, most: number): number => Math.max(-most, Math.min(most, value + by))
    fc.assert(
      fc.property(
        fc.oneof(fc.double({ min: -90, max: 90, noNaN: true }), fc.constantFrom(-90, -89.999, 89.9999, 90)),
        fc.oneof(fc.double({ min: -180, max: 180, noNaN: true }), fc.constantFrom(-180, -179.9999, 179.9999)),
        fc.double({ min: -0.45, max: 0.45, noNaN: true }),
        fc.double({ min: -0.45, max: 0.45, noNaN: true }),
        fc.constantFrom(2, 4, 6, 8),
        (lat, lon, up, across, dropped) => {
          const code = toOpenLocationCode({ lat, lon }, 11)
          const side = 400 / 20 ** (dropped / 2)
          const { at } = fromOpenLocationCode(code)
          const reference = { lat: near(at.lat, up * side, 90), lon: at.lon + across * side }
          expect(recoverCode(code.slice(dropped), reference)).toBe(code)
        },
      ),
      { numRuns: 5000 },
    )
  })

  it('made whole ends in its short code, whatever the reference', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('2222+22', `${'X'.repeat(4)}+XX`, '2X+22', '+X2', '22XX22+2X', 'CX2222+22', 'WXX2+2Q3'),
        fc.double({ min: -90, max: 90, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        (short, lat, lon) => {
          const code = short.startsWith('22XX')
            ? recoverCode('XX22+2X', { lat, lon })
            : recoverCode(short, { lat, lon })
          expect(code.endsWith(short.startsWith('22XX') ? 'XX22+2X' : short)).toBe(true)
          expect(codeKind(code)).toBe('full')
        },
      ),
      { numRuns: 3000 },
    )
  })
})
